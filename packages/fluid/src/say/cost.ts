import { type Cents, wholeParts } from '../cost/money.ts'
import { datesLocale } from '../words/index.ts'
import { type MoneyReader, sayCents, sayMoneyBetween, sayWholeMoney } from './money.ts'
import { sayCount, sayList } from './phrases.ts'
import { type Reader, sayNumber, sayVolume } from './units.ts'

/** What a cost is part of. */
export type SaidPart = 'concentrate' | 'water' | 'additives' | 'cleanouts' | 'rounds' | 'waste'

/** The parts by their names in a table and in a sentence. */
export const costPartNames: Readonly<Record<SaidPart, { title: string; words: string }>> = {
  concentrate: { title: 'Concentrate', words: 'concentrate' },
  water: { title: 'Water', words: 'water' },
  additives: { title: 'Additives', words: 'additives' },
  cleanouts: { title: 'Cleanouts', words: 'cleanouts' },
  rounds: { title: 'Rounds', words: 'work on rounds' },
  waste: { title: 'Waste', words: 'waste picked up' },
}

/** "October 2026" of `2026-10`. */
export function sayMonth(month: string, { locale = datesLocale() }: Pick<Reader, 'locale'> = {}): string {
  const [year, number] = month.split('-').map(Number) as [number, number]
  const format = new Intl.DateTimeFormat(locale, { month: 'long', year: 'numeric', timeZone: 'UTC' })
  return format.format(Date.UTC(year, number - 1, 15))
}

/**
 * A cost and its parts in a sentence, dearest first: "October 2026 cost €412: €310 concentrate, €61 water, €41 work on rounds." Said in whole units the parts
 * still add up.
 */
export function sayCost(when: string, parts: readonly { part: SaidPart; cents: Cents }[], reader: MoneyReader): string {
  const paid = parts.filter(({ cents }) => cents > 0).toSorted((a, b) => b.cents - a.cents)
  const total = paid.reduce((sum, { cents }) => sum + cents, 0)
  if (total === 0) return `${when}: nothing was counted.`
  const isWhole = total >= 10_000
  const said = isWhole
    ? wholeParts(
        paid.map(({ cents }) => cents),
        100,
      )
    : paid.map(({ cents }) => cents)
  const money = (cents: Cents) => (isWhole ? sayWholeMoney(cents, reader) : sayCents(cents, reader))
  const words = paid.map(({ part }, i) => `${money(said[i]!)} ${costPartNames[part].words}`)
  return `${when} cost ${money(said.reduce((sum, cents) => sum + cents, 0))}: ${sayList(words)}.`
}

/** What was not counted, by what was missing. */
export interface SaidGap {
  what:
    | 'fill-unmeasured'
    | 'strength-unknown'
    | 'concentrate-price'
    | 'water-price'
    | 'additive-price'
    | 'waste-price'
    | 'waste-unmeasured'
    | 'additive-unmeasured'
    | 'beyond-measure'
    | 'labour'
    | 'machine-hours'
    | 'minutes-per-stop'
    | 'cleaner-price'
    | 'cleanout-hours'
  count: number
  /** Of the things that lack it, each once. */
  names: readonly string[]
}

/** One sentence for each thing that is missing. */
export const sayGap = ({ what, count, names }: SaidGap): string =>
  gapWords[what](count, sayList(names.slice(0, 4)) + more(names))

const more = (names: readonly string[]) => (names.length > 4 ? ` and ${names.length - 4} more` : '')

const gapWords: Record<SaidGap['what'], (count: number, names: string) => string> = {
  'fill-unmeasured': (count, names) =>
    `${sayCount(count, 'pour', 'pours')} without an amount, and without a level read before, ${count === 1 ? 'is' : 'are'} not counted: ${names}.`,
  'strength-unknown': (count, names) =>
    `${sayCount(count, 'pour', 'pours')} without a strength ${count === 1 ? 'is' : 'are'} not counted: ${names}.`,
  'concentrate-price': (_, names) => `No price is set for the concentrate ${names}: it is not counted.`,
  'water-price': (_, names) => `No price is set for ${names === '' ? 'water' : names}: it is not counted.`,
  'additive-price': (_, names) => `No price is set for ${names}: it is not counted.`,
  'waste-price': (count, names) => `No price is set for ${names}: ${sayCount(count, 'pickup', 'pickups')} not counted.`,
  'waste-unmeasured': (count, names) =>
    `${sayCount(count, 'pickup', 'pickups')} of ${names} without an amount: not counted.`,
  'additive-unmeasured': (count, names) =>
    `${sayCount(count, 'addition', 'additions')} of ${names} without an amount: not counted.`,
  'beyond-measure': (count, names) =>
    `${sayCount(count, 'amount', 'amounts')} of ${names} beyond all measure: not counted.`,
  labour: () => 'No hourly rate of work is set: work is not counted.',
  'machine-hours': () => 'No rate of a standing machine is set: downtime is not counted.',
  'minutes-per-stop': (count) =>
    `How long a stop takes is not set: ${sayCount(count, 'stop', 'stops')} of rounds not counted.`,
  'cleaner-price': () => 'No price of system cleaner is set: it is not counted.',
  'cleanout-hours': (count, names) =>
    `${sayCount(count, 'cleanout', 'cleanouts')} without hours: work and downtime not counted (${names}).`,
}

/** An amount of concentrate with its interval. */
export interface SaidLitres {
  mean: number
  low: number
  high: number
}

/** What running above the target cost; empty where that was nothing worth saying. `cents` null: no price is known. */
export function sayRich(litres: SaidLitres, cents: SaidLitres | null, reader: Reader & MoneyReader): string {
  if (litres.mean < 0.1) return ''
  const money = cents === null ? '' : `${sayMoneyBetween(cents, reader)} of it went for running above target: `
  return `${money}about ${sayVolume(litres.mean, reader)} (${sayVolume(litres.low, reader)} to ${sayVolume(litres.high, reader)}) of concentrate left with chips and parts that the target did not ask for.`
}

/** What pouring at the strength that holds the target would have taken instead of what was poured. */
export function saySaving(
  { poured, need, saved, cents }: { poured: number; need: SaidLitres; saved: SaidLitres; cents: SaidLitres | null },
  reader: Reader & MoneyReader,
): string {
  const needed = `${sayVolume(need.mean, reader)} (${sayVolume(need.low, reader)} to ${sayVolume(need.high, reader)})`
  const lead = `${sayVolume(poured, reader)} of concentrate was poured; holding the target would have taken about ${needed}.`
  if (saved.low > 0) {
    const money = cents === null ? '' : `, ${sayMoneyBetween(cents, reader)}`
    return `${lead} Topped up at the strength that holds it, about ${sayVolume(saved.mean, reader)} less${money}.`
  }
  if (saved.high < 0)
    return `${lead} Less was poured than its target asks for: it was run lean, or pours were not written.`
  return `${lead} The difference is within what is not known: nothing can be promised.`
}

/** Days under the band: a risk, with money only where the shop gave a figure. */
export function sayLean(days: number, cents: Cents | null, reader: MoneyReader): string {
  if (days === 0) return ''
  const risk = `${sayCount(days, 'day', 'days')} under the band: rust, tool wear and germs come sooner, a shorter life with them.`
  return cents === null
    ? `${risk} What that costs is not set.`
    : `${risk} By the shop’s own figure ${sayCents(cents, reader)}.`
}

/** When a change pays by money alone, or why that does not matter. */
export type SaidLife =
  | { outcome: 'condition'; because: string }
  | { outcome: 'too-few' }
  | { outcome: 'flat' }
  | { outcome: 'no-change-cost' }
  | {
      outcome: 'age'
      age: number
      days: number
      low: number
      high: number
      changeCost: Cents
      assumed: boolean
    }

export function sayLife(life: SaidLife, reader: MoneyReader): string {
  switch (life.outcome) {
    case 'condition':
      return `${life.because} Condition comes first: it goes now, whatever its age and whatever the money.`
    case 'too-few':
      return 'Too few weeks of this charge are written down to see whether it becomes dearer to keep.'
    case 'flat':
      return 'What is written does not show it becoming dearer to keep: money gives no reason to change it; condition decides.'
    case 'no-change-cost':
      return 'What a change costs is not known: no change of it is written with prices, and its mark or its fluid’s price is missing.'
    case 'age': {
      const { age, days, low, high, changeCost, assumed } = life
      const cost = `${sayWholeMoney(changeCost, reader)}${assumed ? ', reckoned from a full charge' : ', as the last one did'}`
      const verdict =
        age >= days ? 'by money alone a change is due' : `by money alone it pays after about ${sayNumber(days, 0)} days`
      const between = `${sayNumber(low, 0)} to ${sayNumber(high, 0)} days`
      return `${sayNumber(age, 0)} days old; with a change at ${cost}, ${verdict} (${between}). Condition comes first, and no interval of guidance or law becomes longer by it.`
    }
  }
}
