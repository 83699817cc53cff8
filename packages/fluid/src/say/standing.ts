import type { Crossing } from '../estimate/answer-types.ts'
import type { Figure } from '../quantities.ts'
import { say } from '../words/index.ts'
import { sayChance } from './chance.ts'
import { type DayReader, dayAhead, sayOnDay } from './days.ts'
import { type Reader, sayBetween, sayConcentration, sayNumber, sayPercent, sayVolume } from './units.ts'

/** A volume known to this share of itself either way is "about" that; one known worse is a range. */
const about = 0.12

/** "about 240 L"; where it is known badly "200 to 290 L". */
export function sayAbout({ mean, low90, high90 }: Omit<Figure, 'sd'>, reader: Reader): string {
  const isNear = high90 - low90 <= 2 * about * mean * (1 + 1e-9)
  return isNear
    ? say('about {volume}', { volume: sayVolume(mean, reader) })
    : sayBetween(sayVolume(low90, reader), sayVolume(high90, reader))
}

/** What is known of a sump, with its full mark; null is unknown. */
export interface StandingFigures {
  concentration: Omit<Figure, 'sd'> | null
  volume: Omit<Figure, 'sd'> | null
  mark: number | null
}

/** Where a sump stands in one sentence: "Stands at 6.1 % (5.6–6.6) in about 240 L of 310 L." */
export function sayStanding({ concentration, volume, mark }: StandingFigures, reader: Reader): string {
  const level = volume === null ? null : levelWords(volume, mark, reader)
  if (concentration === null) {
    return level === null
      ? say('Strength not known, level not known.')
      : say('Strength not known; {level} in it.', { level })
  }
  const strength = sayConcentration(concentration, reader)
  return level === null
    ? say('Stands at {strength}, level not known.', { strength })
    : say('Stands at {strength} in {level}.', { strength, level })
}

function levelWords(volume: Omit<Figure, 'sd'>, mark: number | null, reader: Reader): string {
  const level = sayAbout(volume, reader)
  return mark === null ? level : say('{level} of {mark}', { level, mark: sayVolume(mark, reader) })
}

/** Where it drifts: "Left alone it stands at 6.9 % in a week." Nothing where it stays at the tenth said. */
export function sayDrift(now: number, inAWeek: number, reader: Reader): string {
  const then = sayPercent(inAWeek, reader)
  return then === sayPercent(now, reader)
    ? say('Left alone it still stands at {then} in a week.', { then })
    : say('Left alone it stands at {then} in a week.', { then })
}

/** A crossing with its days as instants, RFC 3339. */
export type DatedCrossing = Pick<Crossing, 'limit' | 'probability'> & { earliest: string; likely: string }

/**
 * When a limit is crossed if nothing is done: "It likely leaves its band on Thursday, by Tuesday at the earliest."
 * Empty for a band that is left already: where it stands says so.
 */
export function sayCrossing({ limit, probability, earliest, likely }: DatedCrossing, reader: DayReader): string {
  const what = limits[limit]
  if (Date.parse(likely) <= Date.parse(reader.now)) return crossedWords(what)
  const first = dayAhead(earliest, reader)
  if (probability < 0.5) {
    return say(
      'There is a chance of {chance} that it {what, select, suction {sinks to the pumps’ suction} hardness {passes its limit of hardness} chloride {passes its limit of chloride} other {leaves its band}} within six weeks, {which, select, today {perhaps today already} tomorrow {by tomorrow at the earliest} other {by {day} at the earliest}}.',
      { what, chance: sayChance(probability), ...first },
    )
  }
  const on = sayOnDay(likely, reader)
  const then = dayAhead(likely, reader)
  return first.which === then.which && first.day === then.day
    ? say(
        'It likely {what, select, suction {sinks to the pumps’ suction} hardness {passes its limit of hardness} chloride {passes its limit of chloride} other {leaves its band}} {on}.',
        { what, on },
      )
    : say(
        'It likely {what, select, suction {sinks to the pumps’ suction} hardness {passes its limit of hardness} chloride {passes its limit of chloride} other {leaves its band}} {on}, {which, select, today {perhaps today already} tomorrow {by tomorrow at the earliest} other {by {day} at the earliest}}.',
        { what, on, ...first },
      )
}

const limits = {
  'concentration.low': 'band',
  'concentration.high': 'band',
  'volume.low': 'suction',
  'hardness.high': 'hardness',
  'chloride.high': 'chloride',
} as const satisfies Record<Crossing['limit'], string>

function crossedWords(what: (typeof limits)[Crossing['limit']]): string {
  switch (what) {
    case 'band':
      return ''
    case 'suction':
      return say('Its level is likely at the pumps’ suction.')
    case 'hardness':
      return say('It is likely past its limit of hardness.')
    case 'chloride':
      return say('It is likely past its limit of chloride.')
  }
}

/** Why a sump is to be read next when it is. */
export type CheckReason = 'band' | 'rule' | 'never-read'

/** "Next check on Monday, before it may leave its band": sooner than the rule asks. A check that is due says so. */
export function sayNextCheck({ at, because }: { at: string; because: CheckReason }, reader: DayReader): string {
  if (because === 'never-read') return say('Nobody has read its strength yet.')
  const isDue = dayAhead(at, reader).which === 'today' || Date.parse(at) < Date.parse(reader.now)
  if (isDue) {
    return because === 'band' ? say('To be read today: it may have left its band.') : say('To be read today.')
  }
  const on = sayOnDay(at, reader)
  return because === 'band'
    ? say('Next check {on}, before it may leave its band.', { on })
    : say('Next check {on}.', { on })
}

/** "Hardness 320 ppm (270–380)". */
export function sayHardness({ mean, low90, high90 }: Omit<Figure, 'sd'>, reader: Reader): string {
  const whole = (value: number) => sayNumber(value, 0, reader)
  return say('Hardness {mean} ppm ({low}–{high})', { mean: whole(mean), low: whole(low90), high: whole(high90) })
}
