import { message, say } from '@sumpbook/fluid'
import type { SampleWay } from './test-entries.ts'

/** The ways a sample is taken, as people read them; entries keep their words. */
const wayWords: Record<SampleWay, string> = {
  'dip slide': message('dip slide'),
  'slide for moulds': message('slide for moulds and yeasts'),
  laboratory: message('bottle to the laboratory'),
  'standing sample': message('sample left standing'),
}

/** A way to take a sample; what somebody wrote in other words stays as it was written. */
export const sayWay = (way: string): string => (Object.hasOwn(wayWords, way) ? say(wayWords[way as SampleWay]) : way)
