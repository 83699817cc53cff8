import cautions from './de/cautions.json' with { type: 'json' }
import computation from './de/computation.json' with { type: 'json' }
import diagnosis from './de/diagnosis.json' with { type: 'json' }
import guidance from './de/guidance.json' with { type: 'json' }
import reasons from './de/reasons.json' with { type: 'json' }
import say from './de/say.json' with { type: 'json' }
import type { Catalogue } from './speech.ts'

/** What the computation says, in German. */
export const catalogue: Catalogue = { ...cautions, ...computation, ...diagnosis, ...guidance, ...reasons, ...say }
