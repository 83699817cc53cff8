import type { Catalogue } from '@sumpbook/fluid'
import { catalogue as fluid } from '@sumpbook/fluid/words/es'
import faults from './es/faults.json' with { type: 'json' }
import imports from './es/imports.json' with { type: 'json' }
import records from './es/records.json' with { type: 'json' }
import today from './es/today.json' with { type: 'json' }

/** What the book says, and the computation with it, in Spanish. */
export const catalogue: Catalogue = { ...fluid, ...faults, ...imports, ...records, ...today }
