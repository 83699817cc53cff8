import type { Catalogue } from '@sumpbook/fluid'
import { catalogue as fluid } from '@sumpbook/fluid/words/de'
import records from './de/records.json' with { type: 'json' }
import today from './de/today.json' with { type: 'json' }

/** What the book says, and the computation with it, in German. */
export const catalogue: Catalogue = { ...fluid, ...records, ...today }
