import type { Catalogue } from '@sumpbook/fluid'
import { catalogue as fluid } from '@sumpbook/fluid/words/de'
import begin from './de/begin.json' with { type: 'json' }
import cleanouts from './de/cleanouts.json' with { type: 'json' }
import cost from './de/cost.json' with { type: 'json' }
import doses from './de/doses.json' with { type: 'json' }
import doubts from './de/doubts.json' with { type: 'json' }
import guidance from './de/guidance.json' with { type: 'json' }
import journal from './de/journal.json' with { type: 'json' }
import labels from './de/labels.json' with { type: 'json' }
import mixing from './de/mixing.json' with { type: 'json' }
import offline from './de/offline.json' with { type: 'json' }
import parts from './de/parts.json' with { type: 'json' }
import people from './de/people.json' with { type: 'json' }
import round from './de/round.json' with { type: 'json' }
import sheet from './de/sheet.json' with { type: 'json' }
import shop from './de/shop.json' with { type: 'json' }
import stock from './de/stock.json' with { type: 'json' }
import sumps from './de/sumps.json' with { type: 'json' }
import tests from './de/tests.json' with { type: 'json' }
import today from './de/today.json' with { type: 'json' }
import water from './de/water.json' with { type: 'json' }
import why from './de/why.json' with { type: 'json' }

/** What the app says, and the computation with it, in German. */
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
