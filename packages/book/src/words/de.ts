import type { Catalogue } from '@sumpbook/fluid'
import { catalogue as fluid } from '@sumpbook/fluid/words/de'
import faults from './de/faults.json' with { type: 'json' }
import imports from './de/imports.json' with { type: 'json' }
import records from './de/records.json' with { type: 'json' }
import today from './de/today.json' with { type: 'json' }

/** What the book says, and the computation with it, in German. */
export const catalogue: Catalogue = { ...fluid, ...faults, ...imports, ...records, ...today }
