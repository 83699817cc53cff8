import type { ShutdownStep } from '../cleanout/shutdown.ts'
import { say } from '../words/index.ts'
import { type Reader, sayNumber } from './units.ts'

/** From how far a pH has fallen while a machine stood the cause is looked for (as from its fresh value: DGUV Regel 109-003, Annex 3). */
const fallen = 0.5

/** A step before a machine stands, or before it runs again, as it is read at the machine. */
export const sayShutdownStep = (
  { title, text }: Pick<ShutdownStep, 'title' | 'text'>,
  reader: Pick<Reader, 'locale'> = {},
): { title: string; text: string } => ({
  title: say(title),
  text: say(text, { fall: sayNumber(fallen, 1, reader) }),
})
