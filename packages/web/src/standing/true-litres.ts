import { trueMarks, volumeBesideMark } from '@sumpbook/fluid'
import type { SumpNow } from '../api/types.ts'

/** A sump in litres as it truly holds them: what is poured is measured, a plate is not. Its level is known beside its mark. */
export function inTrueLitres<T extends Pick<SumpNow, 'bench' | 'mark' | 'volume'>>(sump: T): T {
  const { bench, mark, volume } = sump
  return { ...sump, bench: trueMarks(bench, mark), volume: volume === null ? null : volumeBesideMark(volume, mark) }
}

/** Whether what was learnt of a mark differs from its plate by more than an eye on a level does. */
export const isOtherMark = (plate: number | null, learnt: number | null): boolean =>
  learnt !== null && plate !== null && Math.abs(learnt - plate) > 0.02 * plate
