import type { Days, Figure, MgPerLitre } from '../quantities.ts'
import { sayCount } from './phrases.ts'
import { type Reader, sayConcentration, sayNumber } from './units.ts'

/** A day of a plan, as far as it is said. */
export interface PlannedDay {
  days: Days
  concentration: Figure
  hardness: Figure
}

/** "In 13 weeks 7.6 % (6.9–8.3), hardness 230 ppm (190–270)." */
export function sayPlannedDay({ days, concentration, hardness }: PlannedDay, reader: Reader): string {
  const when = days % 7 === 0 ? sayCount(days / 7, 'week', 'weeks') : sayCount(days, 'day', 'days')
  const whole = (value: number) => sayNumber(value, 0, reader)
  const minerals = `${whole(hardness.mean)} ppm (${whole(hardness.low90)}–${whole(hardness.high90)})`
  return `In ${when} ${sayConcentration(concentration, reader)}, hardness ${minerals}.`
}

/** "With deionised water since then its hardness would now be about 45 ppm instead of 190 ppm, by the same reckoning." */
export function sayOtherWater(
  { asPoured, asked }: { asPoured: MgPerLitre; asked: MgPerLitre },
  water: string,
  reader: Reader,
): string {
  const whole = (value: number) => `${sayNumber(Math.max(0, value), 0, reader)} ppm`
  if (Math.abs(asPoured - asked) < 0.5) return `With ${water} since then its hardness would be the same.`
  return `With ${water} since then its hardness would now be about ${whole(asked)} instead of ${whole(asPoured)}, by the same reckoning.`
}
