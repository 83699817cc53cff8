import type { Catalogue } from '@sumpbook/fluid'
import { catalogue as fluid } from '@sumpbook/fluid/words/es'
import begin from './es/begin.json' with { type: 'json' }
import cleanouts from './es/cleanouts.json' with { type: 'json' }
import cost from './es/cost.json' with { type: 'json' }
import doses from './es/doses.json' with { type: 'json' }
import doubts from './es/doubts.json' with { type: 'json' }
import guidance from './es/guidance.json' with { type: 'json' }
import journal from './es/journal.json' with { type: 'json' }
import labels from './es/labels.json' with { type: 'json' }
import mixing from './es/mixing.json' with { type: 'json' }
import offline from './es/offline.json' with { type: 'json' }
import parts from './es/parts.json' with { type: 'json' }
import people from './es/people.json' with { type: 'json' }
import round from './es/round.json' with { type: 'json' }
import sheet from './es/sheet.json' with { type: 'json' }
import shop from './es/shop.json' with { type: 'json' }
import stock from './es/stock.json' with { type: 'json' }
import sumps from './es/sumps.json' with { type: 'json' }
import tests from './es/tests.json' with { type: 'json' }
import today from './es/today.json' with { type: 'json' }
import water from './es/water.json' with { type: 'json' }
import why from './es/why.json' with { type: 'json' }

/** What the app says, and the computation with it, in Spanish. */
export const catalogue: Catalogue = {
  ...fluid,
  ...begin,
  ...cleanouts,
  ...cost,
  ...doses,
  ...doubts,
  ...guidance,
  ...journal,
  ...labels,
  ...mixing,
  ...offline,
  ...parts,
  ...people,
  ...round,
  ...sheet,
  ...shop,
  ...stock,
  ...sumps,
  ...tests,
  ...today,
  ...water,
  ...why,
}
