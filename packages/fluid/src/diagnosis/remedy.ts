import { type CautionId, sayCautions } from '../cautions/cautions.ts'
import { say } from '../words/index.ts'

/** What helps against a cause: a sentence or a few, or cautions that hold before anything is done. */
export type Remedy = string | { cautions: readonly CautionId[]; after: string }

/** A remedy as people read it. */
export const sayRemedy = (remedy: Remedy): string =>
  typeof remedy === 'string' ? say(remedy) : [...sayCautions(remedy.cautions), say(remedy.after)].join(' ')
