import type { Days, Figure, MgPerLitre } from '../quantities.ts'
import { say } from '../words/index.ts'
import { type Reader, sayConcentration, sayNumber } from './units.ts'

/** A day of a plan, as far as it is said. */
export interface PlannedDay {
  days: Days
  concentration: Figure
  hardness: Figure
}

/** "In 13 weeks 7.6 % (6.9–8.3), hardness 230 ppm (190–270)." */
export function sayPlannedDay({ days, concentration, hardness }: PlannedDay, reader: Reader): string {
  const isWeeks = days % 7 === 0
  const whole = (value: number) => sayNumber(value, 0, reader)
  return say(
    'In {unit, select, weeks {{count, plural, one {# week} other {# weeks}}} other {{count, plural, one {# day} other {# days}}}} {strength}, hardness {hardness} ppm ({low}–{high}).',
    {
      unit: isWeeks ? 'weeks' : 'days',
      count: isWeeks ? days / 7 : Math.round(days),
      strength: sayConcentration(concentration, reader),
      hardness: whole(hardness.mean),
      low: whole(hardness.low90),
      high: whole(hardness.high90),
    },
  )
}

/** "With deionised water since then its hardness would now be about 45 ppm instead of 190 ppm, by the same reckoning." */
export function sayOtherWater(
  { asPoured, asked }: { asPoured: MgPerLitre; asked: MgPerLitre },
  water: string,
  reader: Reader,
): string {
  const whole = (value: number) => `${sayNumber(Math.max(0, value), 0, reader)} ppm`
  if (Math.abs(asPoured - asked) < 0.5) return say('With {water} since then its hardness would be the same.', { water })
  return say(
    'With {water} since then its hardness would now be about {asked} instead of {asPoured}, by the same reckoning.',
    { water, asked: whole(asked), asPoured: whole(asPoured) },
  )
}
