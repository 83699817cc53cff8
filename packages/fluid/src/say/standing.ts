import type { Crossing } from '../estimate/answer-types.ts'
import type { Figure } from '../quantities.ts'
import { sayChance } from './chance.ts'
import { type DayReader, sayDayAhead, sayOnDay } from './days.ts'
import { type Reader, sayConcentration, sayNumber, sayPercent, sayVolume } from './units.ts'

/** A volume known to this share of itself either way is "about" that; one known worse is a range. */
const about = 0.12

/** "about 240 L"; where it is known badly "200 to 290 L". */
export function sayAbout({ mean, low90, high90 }: Omit<Figure, 'sd'>, reader: Reader): string {
  const isNear = high90 - low90 <= 2 * about * mean * (1 + 1e-9)
  if (isNear) return `about ${sayVolume(mean, reader)}`
  const [low, high] = [sayVolume(low90, reader), sayVolume(high90, reader)]
  return `${low.slice(0, low.lastIndexOf(' '))} to ${high}`
}

/** What is known of a sump, with its full mark; null is unknown. */
export interface StandingFigures {
  concentration: Omit<Figure, 'sd'> | null
  volume: Omit<Figure, 'sd'> | null
  mark: number | null
}

/** Where a sump stands in one sentence: "Stands at 6.1 % (5.6–6.6) in about 240 L of 310 L." */
export function sayStanding({ concentration, volume, mark }: StandingFigures, reader: Reader): string {
  const of = mark === null ? '' : ` of ${sayVolume(mark, reader)}`
  const level = volume === null ? null : `${sayAbout(volume, reader)}${of}`
  if (concentration === null) return `Strength not known${level === null ? ', level not known' : `; ${level} in it`}.`
  return `Stands at ${sayConcentration(concentration, reader)}${level === null ? ', level not known' : ` in ${level}`}.`
}

/** Where it drifts: "Left alone it stands at 6.9 % in a week." Nothing where it stays at the tenth said. */
export function sayDrift(now: number, inAWeek: number, reader: Reader): string {
  const then = sayPercent(inAWeek, reader)
  return then === sayPercent(now, reader)
    ? `Left alone it still stands at ${then} in a week.`
    : `Left alone it stands at ${then} in a week.`
}

/** A crossing with its days as instants, RFC 3339. */
export type DatedCrossing = Pick<Crossing, 'limit' | 'probability'> & { earliest: string; likely: string }

/**
 * When a limit is crossed if nothing is done: "It likely leaves its band on Thursday, by Tuesday at the earliest."
 * Empty for a band that is left already: where it stands says so.
 */
export function sayCrossing({ limit, probability, earliest, likely }: DatedCrossing, reader: DayReader): string {
  const { crosses, crossed } = limitWords[limit]
  if (Date.parse(likely) <= Date.parse(reader.now)) return crossed
  const first = sayDayAhead(earliest, reader)
  const soonest = first === 'today' ? 'perhaps today already' : `by ${first} at the earliest`
  if (probability < 0.5) {
    return `There is a chance of ${sayChance(probability)} that it ${crosses} within six weeks, ${soonest}.`
  }
  const on = sayOnDay(likely, reader)
  const isSame = first === sayDayAhead(likely, reader)
  return `It likely ${crosses} ${on}${isSame ? '' : `, ${soonest}`}.`
}

const limitWords: Record<Crossing['limit'], { crosses: string; crossed: string }> = {
  'concentration.low': { crosses: 'leaves its band', crossed: '' },
  'concentration.high': { crosses: 'leaves its band', crossed: '' },
  'volume.low': { crosses: 'sinks to the pumps’ suction', crossed: 'Its level is likely at the pumps’ suction.' },
  'hardness.high': { crosses: 'passes its limit of hardness', crossed: 'It is likely past its limit of hardness.' },
  'chloride.high': { crosses: 'passes its limit of chloride', crossed: 'It is likely past its limit of chloride.' },
}

/** Why a sump is to be read next when it is. */
export type CheckReason = 'band' | 'rule' | 'never-read'

/** "Next check on Monday, before it may leave its band": sooner than the rule asks. A check that is due says so. */
export function sayNextCheck({ at, because }: { at: string; because: CheckReason }, reader: DayReader): string {
  if (because === 'never-read') return 'Nobody has read its strength yet.'
  const day = sayDayAhead(at, reader)
  const isDue = day === 'today' || Date.parse(at) < Date.parse(reader.now)
  if (isDue) {
    return because === 'band' ? 'To be read today: it may have left its band.' : 'To be read today.'
  }
  const on = sayOnDay(at, reader)
  return because === 'band' ? `Next check ${on}, before it may leave its band.` : `Next check ${on}.`
}

/** "Hardness 320 ppm (270–380)". */
export function sayHardness({ mean, low90, high90 }: Omit<Figure, 'sd'>, reader: Reader): string {
  const whole = (value: number) => sayNumber(value, 0, reader)
  return `Hardness ${whole(mean)} ppm (${whole(low90)}–${whole(high90)})`
}
