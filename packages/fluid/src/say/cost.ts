import { type Cents, wholeParts } from '../cost/money.ts'
import { datesLocale, message, say } from '../words/index.ts'
import { upperFirst } from './guidance.ts'
import { type MoneyReader, sayCents, sayMoneyBetween, sayWholeMoney } from './money.ts'
import { sayList } from './phrases.ts'
import { type Reader, sayNumber, sayVolume } from './units.ts'

/** What a cost is part of. */
export type SaidPart = 'concentrate' | 'water' | 'additives' | 'cleanouts' | 'rounds' | 'waste'

/** The parts by their names in a table and in a sentence. */
export const costPartNames: Readonly<Record<SaidPart, { title: string; words: string }>> = {
  concentrate: { title: message('Concentrate'), words: message('concentrate') },
  water: { title: message('Water'), words: message('water') },
  additives: { title: message('Additives'), words: message('additives') },
  cleanouts: { title: message('Cleanouts'), words: message('cleanouts') },
  rounds: { title: message('Rounds'), words: message('work on rounds') },
  waste: { title: message('Waste'), words: message('waste picked up') },
}

/** "October 2026" of `2026-10`, with a capital letter in every language: it stands first. */
export function sayMonth(month: string, { locale = datesLocale() }: Pick<Reader, 'locale'> = {}): string {
  const [year, number] = month.split('-').map(Number) as [number, number]
  const format = new Intl.DateTimeFormat(locale, { month: 'long', year: 'numeric', timeZone: 'UTC' })
  return upperFirst(format.format(Date.UTC(year, number - 1, 15)))
}

/**
 * A cost and its parts in a sentence, dearest first: "October 2026 cost €412: €310 concentrate, €61 water, €41 work on rounds." Said in whole units the parts
 * still add up.
 */
export function sayCost(when: string, parts: readonly { part: SaidPart; cents: Cents }[], reader: MoneyReader): string {
  const paid = parts.filter(({ cents }) => cents > 0).toSorted((a, b) => b.cents - a.cents)
  const total = paid.reduce((sum, { cents }) => sum + cents, 0)
  if (total === 0) return say('{when}: nothing was counted.', { when })
  const isWhole = total >= 10_000
  const said = isWhole
    ? wholeParts(
        paid.map(({ cents }) => cents),
        100,
      )
    : paid.map(({ cents }) => cents)
  const money = (cents: Cents) => (isWhole ? sayWholeMoney(cents, reader) : sayCents(cents, reader))
  const words = paid.map(({ part }, i) =>
    say('{money} {part}', { money: money(said[i]!), part: say(costPartNames[part].words) }),
  )
  return say('{when} cost {money}: {parts}.', {
    when,
    money: money(said.reduce((sum, cents) => sum + cents, 0)),
    parts: sayList(words),
  })
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
export function sayGap({ what, count, names }: SaidGap): string {
  const more = names.length - mostNames
  const some = sayList(names.slice(0, mostNames))
  return say(gapWords[what], {
    count,
    names: more > 0 ? say('{names} and {more} more', { names: some, more }) : some,
    hasNames: names.length > 0 ? 'yes' : 'no',
  })
}

/** So many names are said; of more it is said how many. */
const mostNames = 4

const gapWords: Record<SaidGap['what'], string> = {
  'fill-unmeasured': message(
    '{count, plural, one {# pour without an amount, and without a level read before, is} other {# pours without an amount, and without a level read before, are}} not counted: {names}.',
  ),
  'strength-unknown': message(
    '{count, plural, one {# pour without a strength is} other {# pours without a strength are}} not counted: {names}.',
  ),
  'concentrate-price': message('No price is set for the concentrate {names}: it is not counted.'),
  'water-price': message('No price is set for {hasNames, select, no {water} other {{names}}}: it is not counted.'),
  'additive-price': message('No price is set for {names}: it is not counted.'),
  'waste-price': message('No price is set for {names}: {count, plural, one {# pickup} other {# pickups}} not counted.'),
  'waste-unmeasured': message(
    '{count, plural, one {# pickup} other {# pickups}} of {names} without an amount: not counted.',
  ),
  'additive-unmeasured': message(
    '{count, plural, one {# addition} other {# additions}} of {names} without an amount: not counted.',
  ),
  'beyond-measure': message(
    '{count, plural, one {# amount} other {# amounts}} of {names} beyond all measure: not counted.',
  ),
  labour: message('No hourly rate of work is set: work is not counted.'),
  'machine-hours': message('No rate of a standing machine is set: downtime is not counted.'),
  'minutes-per-stop': message(
    'How long a stop takes is not set: {count, plural, one {# stop} other {# stops}} of rounds not counted.',
  ),
  'cleaner-price': message('No price of system cleaner is set: it is not counted.'),
  'cleanout-hours': message(
    '{count, plural, one {# cleanout} other {# cleanouts}} without hours: work and downtime not counted ({names}).',
  ),
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
  const range = rangeValues(litres, reader)
  return cents === null
    ? say(
        'about {mean} ({low} to {high}) of concentrate left with chips and parts that the target did not ask for.',
        range,
      )
    : say(
        '{money} of it went for running above target: about {mean} ({low} to {high}) of concentrate left with chips and parts that the target did not ask for.',
        { ...range, money: sayMoneyBetween(cents, reader) },
      )
}

const rangeValues = ({ mean, low, high }: SaidLitres, reader: Reader) => ({
  mean: sayVolume(mean, reader),
  low: sayVolume(low, reader),
  high: sayVolume(high, reader),
})

/** What pouring at the strength that holds the target would have taken instead of what was poured. */
export function saySaving(
  { poured, need, saved, cents }: { poured: number; need: SaidLitres; saved: SaidLitres; cents: SaidLitres | null },
  reader: Reader & MoneyReader,
): string {
  const lead = say(
    '{poured} of concentrate was poured; holding the target would have taken about {mean} ({low} to {high}).',
    { ...rangeValues(need, reader), poured: sayVolume(poured, reader) },
  )
  return `${lead} ${savedWords(saved, cents, reader)}`
}

function savedWords(saved: SaidLitres, cents: SaidLitres | null, reader: Reader & MoneyReader): string {
  if (saved.low > 0) {
    const volume = sayVolume(saved.mean, reader)
    return cents === null
      ? say('Topped up at the strength that holds it, about {volume} less.', { volume })
      : say('Topped up at the strength that holds it, about {volume} less, {money}.', {
          volume,
          money: sayMoneyBetween(cents, reader),
        })
  }
  return saved.high < 0
    ? say('Less was poured than its target asks for: it was run lean, or pours were not written.')
    : say('The difference is within what is not known: nothing can be promised.')
}

/** Days under the band: a risk, with money only where the shop gave a figure. */
export function sayLean(days: number, cents: Cents | null, reader: MoneyReader): string {
  if (days === 0) return ''
  const risk = say(
    '{days, plural, one {# day} other {# days}} under the band: rust, tool wear and germs come sooner, a shorter life with them.',
    { days },
  )
  return cents === null
    ? `${risk} ${say('What that costs is not set.')}`
    : `${risk} ${say('By the shop’s own figure {money}.', { money: sayCents(cents, reader) })}`
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
      return say('{because} Condition comes first: it goes now, whatever its age and whatever the money.', {
        because: life.because,
      })
    case 'too-few':
      return say('Too few weeks of this charge are written down to see whether it becomes dearer to keep.')
    case 'flat':
      return say(
        'What is written does not show it becoming dearer to keep: money gives no reason to change it; condition decides.',
      )
    case 'no-change-cost':
      return say(
        'What a change costs is not known: no change of it is written with prices, and its mark or its fluid’s price is missing.',
      )
    case 'age': {
      const { age, days, low, high, changeCost, assumed } = life
      return say(
        '{age} days old; with a change at {cost}, {assumed, select, yes {reckoned from a full charge} other {as the last one did}}, {isDue, select, yes {by money alone a change is due} other {by money alone it pays after about {days} days}} ({low} to {high} days). Condition comes first, and no interval of guidance or law becomes longer by it.',
        {
          age: sayNumber(age, 0),
          cost: sayWholeMoney(changeCost, reader),
          assumed: assumed ? 'yes' : 'no',
          isDue: age >= days ? 'yes' : 'no',
          days: sayNumber(days, 0),
          low: sayNumber(low, 0),
          high: sayNumber(high, 0),
        },
      )
    }
  }
}
