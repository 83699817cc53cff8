import { type Figure, type Reader, say, sayAbout, sayVolume, trueLitres, trueMarks } from '@sumpbook/fluid'
import type { SumpNow } from '../api/types.ts'
import { isOtherMark } from '../standing/true-litres.ts'
import { type LevelSeen, volumeOf } from './read-level.ts'
import type { Strength } from './read-strength.ts'
import type { Typed } from './typed.ts'

/** What to know beside the advice. */
export function notesOf(
  { pumps }: Typed,
  { seenLevel, strength, known }: { seenLevel: LevelSeen | null; strength: Strength; known: Figure | null },
  sump: SumpNow,
  reader: Reader,
): string[] {
  const { bench, mark, doubts } = sump
  const notes: string[] = []
  if (strength !== null && 'unknown' in strength) notes.push(strength.unknown)
  if (strength !== null && doubts.length > 0) {
    notes.push(
      say('No recipe while a record of this sump does not fit: write this reading down, and see what fits then.'),
    )
  } else if (seenLevel === null && strength !== null && known !== null) {
    notes.push(
      say('No level read now: reckoned with {volume}, as the records have it.', { volume: sayAbout(known, reader) }),
    )
  }
  const { fillVolume, minVolume: suction } = trueMarks(bench, mark)
  if (seenLevel !== null && isOtherMark(bench.fillVolume, fillVolume)) {
    notes.push(
      say('Its mark is reckoned as {mark}, as the pours tell: so about {volume} in it.', {
        mark: sayVolume(fillVolume!, reader),
        volume: sayVolume(trueLitres(seenLevel.litres, bench, mark), reader),
      }),
    )
  }
  if (seenLevel !== null && suction !== null && volumeOf(seenLevel.litres, { pumps }, sump).mean < suction) {
    notes.push(say('The level is under the pumps’ suction: keep the pumps off until it is back.'))
  }
  if (seenLevel !== null && pumps === 'running' && bench.holdUp === 0) {
    notes.push(say('With the pumps running the level reads low: what this sump’s lines hold is not known.'))
  }
  return notes
}
