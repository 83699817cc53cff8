import cautions from './es/cautions.json' with { type: 'json' }
import computation from './es/computation.json' with { type: 'json' }
import diagnosis from './es/diagnosis.json' with { type: 'json' }
import guidance from './es/guidance.json' with { type: 'json' }
import reasons from './es/reasons.json' with { type: 'json' }
import say from './es/say.json' with { type: 'json' }
import type { Catalogue } from './speech.ts'

/** What the computation says, in Spanish. */
export const catalogue: Catalogue = { ...cautions, ...computation, ...diagnosis, ...guidance, ...reasons, ...say }
