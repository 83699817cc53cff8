import type { Reported } from '../estimate/events.ts'
import type { GermClass } from '../guidance/germ-class.ts'
import type { CalmInterval, CalmRule } from '../guidance/nitrite-interval.ts'
import type { GuidanceSource, GuidedTest, RuleSays } from '../guidance/pack.ts'
import type { PhVerdict } from '../guidance/ph-verdict.ts'
import { rangeOf } from '../guidance/reported-range.ts'
import type { LimitEnd, LimitedQuantity, LimitLevel, OfferedLimit, SettledLimit } from '../guidance/settled-limits.ts'
import type { SlideRead } from '../guidance/slide-read.ts'
import type { TestInterval } from '../guidance/test-interval.ts'
import { datesLocale, say } from '../words/index.ts'
import { sayCount, sayList } from './phrases.ts'
import { type Reader, sayNumber } from './units.ts'

type NumberReader = Pick<Reader, 'locale'>

/** What is tested, as people call it. */
export const sayTest = (test: GuidedTest): string => testWords[test]

const testWords: Record<GuidedTest, string> = {
  senses: 'look and smell',
  level: 'level',
  concentration: 'concentration',
  ph: 'pH',
  nitrite: 'nitrite',
  bacteria: 'dip slide',
  hardness: 'hardness',
  trampOil: 'tramp oil',
  waterNitrate: 'nitrate of the make-up water',
  mist: 'mist in the air',
}

/** "every 7 days", "every day". */
export const sayEvery = (days: number): string => (days === 1 ? 'every day' : `every ${sayCount(days, 'day', 'days')}`)

/** What a rule says, in a few words: "every 7 days", "at most 20 mg/L", "under 10,000 good, …". */
export function sayRule(says: RuleSays, reader: NumberReader = {}): string {
  const figure = (value: number) => sayNumber(value, 2, reader, 0)
  switch (says.kind) {
    case 'every':
      return sayEvery(says.days)
    case 'every-unless-calm': {
      const { below, inARow, longest } = says.calm
      return `${sayEvery(says.days)}; up to ${figure(longest)} days after ${figure(inARow)} results in a row under ${figure(below)} mg/L`
    }
    case 'classes': {
      const { reasonable, poor } = says.classes
      const first = reasonable === null ? '' : `under ${figure(reasonable)} good, from there reasonable, `
      return `${first}from ${figure(poor)} poor (CFU/mL)`
    }
    case 'ends': {
      const unit = says.unit === '' ? '' : ` ${say(says.unit)}`
      const ends = [
        says.low === undefined ? '' : `at least ${figure(says.low)}${unit}`,
        says.high === undefined ? '' : `at most ${figure(says.high)}${unit}`,
      ]
      return ends.filter((end) => end !== '').join(', ')
    }
    case 'fall':
      return `fall of more than ${figure(says.by)} from the fresh fill: ${says.asks === 'act' ? 'act' : 'change'}`
    case 'no-figure':
      return 'sets no figure'
  }
}

const knownWords: Record<GuidanceSource['tag'], string> = {
  read: 'read',
  'from memory': 'from memory, not read again',
  'common practice': 'common practice, no source',
}

/** "TRGS 611 …, 5.3, edition May 2007; read 28 Nov 2026". */
export function saySource(
  { document, section, edition, readOn, tag }: GuidanceSource,
  reader: NumberReader = {},
): string {
  const known = readOn === null ? knownWords[tag] : `${knownWords[tag]} ${sayDate(readOn, reader)}`
  return `${document}, ${section}, edition ${edition}; ${known}`
}

/** A calendar day, `2026-11-28`, as people write it: "28 Nov 2026". */
export function sayDate(day: string, { locale = datesLocale() }: NumberReader = {}): string {
  let format = dateFormats.get(locale)
  if (format === undefined) {
    format = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' })
    dateFormats.set(locale, format)
  }
  return format.format(new Date(`${day}T00:00:00Z`))
}

/** Making a format takes far longer than using it: each is made once. */
const dateFormats = new Map<string, Intl.DateTimeFormat>()

/** Who asks for a test how often, and what was not granted. */
export function sayInterval(interval: TestInterval, test: GuidedTest, pack: string): string {
  const what = upperFirst(sayTest(test))
  if (interval.outcome === 'none') return `${what}: nobody sets an interval.`
  const { days, level, refused } = interval
  const by = level === 'guidance' ? pack : 'the shop’s own rule'
  const clipped =
    refused === null ? '' : ` The shop’s own ${sayCount(refused, 'day', 'days')} are longer and do not count.`
  return `${what} ${sayEvery(days)}, by ${by}.${clipped}`
}

/** Why an interval that may grow is as long as it is. */
export function sayCalm({ run, because }: CalmInterval, { calm }: CalmRule): string {
  const under = `under ${calm.below} mg/L`
  if (because === 'calm') return `The last ${run} results in a row were ${under}.`
  if (because === 'over') return `The last result was not ${under}.`
  return `${run === 0 ? 'No result' : run === 1 ? 'One result' : `${run} results`} in a row ${under}; ${calm.inARow} let it grow longer.`
}

/** "pH, nitrite and dip slide of Mill 7 are due". */
export function sayTestsDue(tests: readonly GuidedTest[], of: string): string {
  const words = sayList(tests.map(sayTest))
  return `${upperFirst(words)} of ${of} ${tests.length === 1 ? 'is' : 'are'} due`
}

const tenth = (value: number, reader: NumberReader) => sayNumber(value, 1, reader)

/** What pH says, with what to do. */
export function sayPh(verdict: PhVerdict, reader: NumberReader = {}): string {
  const by = verdict.fall === null ? '' : `${tenth(Math.max(0, verdict.fall), reader)} under its fresh value`
  switch (verdict.outcome) {
    case 'below-floor':
      return `pH is under its floor of ${tenth(verdict.floor, reader)}${by === '' ? '' : `, ${by}`}. Find the cause before anything is added.`
    case 'change':
      return `pH stands ${by}: that is a reason to change the charge. Find the cause first.`
    case 'act':
      return `pH stands ${by}. Find the cause before anything is added.`
    case 'in-order':
      return by === '' ? 'pH is at or above its floor.' : `pH stands ${by}.`
    case 'cannot-tell':
      return cannotTell[verdict.because]
  }
}

const cannotTell = {
  'no-fresh': 'No pH was read soon after the charge: a fall cannot be told from this reading.',
  'steps-too-wide':
    'The steps of these strips are too wide to see such a fall; half-unit strips cannot see 0.5. Read it again with steps of 0.2 to 0.3 or a meter.',
  'other-strength':
    'The fluid stands at another strength than when it was fresh, and pH follows strength: bring it to its target and read again.',
}

/** A figure or a class: "12", "1,000 to 10,000", "under 10", "10,000,000 or more". */
export function sayReported(value: Reported, decimals: number, reader: NumberReader = {}): string {
  const { low, high } = rangeOf(value)
  const figure = (one: number) => sayNumber(one, decimals, reader, 0)
  if (low === high) return figure(low)
  if (high === Number.POSITIVE_INFINITY) return `${figure(low)} or more`
  return low === 0 ? `under ${figure(high)}` : `${figure(low)} to ${figure(high)}`
}

const germWords: Record<GermClass, string> = {
  good: 'good',
  'under-limit': 'under the limit',
  reasonable: 'reasonable',
  poor: 'poor',
}

/** A count with its class: "10,000 to 100,000 CFU/mL: reasonable." */
export function sayGerms(count: Reported, germs: GermClass | null, reader: NumberReader = {}): string {
  const figure = `${sayReported(count, 0, reader)} CFU/mL`
  return germs === null ? `${figure}.` : `${figure}: ${germWords[germs]}.`
}

/** What a slide says: "10,000 to 100,000 CFU/mL: reasonable." */
export function saySlide(
  count: Reported,
  { germs, counts, timing, isFreshSlideDue }: SlideRead,
  reader: NumberReader = {},
): string {
  const figure = `${sayReported(count, 0, reader)} CFU/mL`
  const words = [
    germs === null ? `${figure}.` : `${figure}: ${counts === 'at-least' ? 'at least ' : ''}${germWords[germs]}.`,
    timing === 'in-window' ? '' : timing === 'early' ? early[counts] : late[counts],
    isFreshSlideDue ? 'Treat it as it reads, and take a fresh slide today.' : '',
  ]
  return words.filter((sentence) => sentence !== '').join(' ')
}

type Counts = SlideRead['counts']
const early: Record<Counts, string> = {
  'not-yet': 'Read before its time: it says nothing yet. Read it again within its hours.',
  'at-least': 'Read before its time: what is there counts, more may come.',
  'as-read': '',
  'at-most': '',
}
const late: Record<Counts, string> = {
  'as-read': 'Read after its window; longer would only have shown more.',
  'at-most': 'Read after its window: it may have overgrown and counts as at most that.',
  'not-yet': '',
  'at-least': '',
}

/** That a nitrite result is over its limit, with what guidance asks for then. */
export function sayNitriteOver(value: Reported, limit: number, action: string, reader: NumberReader = {}): string {
  return `Nitrite ${sayReported(value, 0, reader)} mg/L, over the limit of ${sayNumber(limit, 0, reader)} mg/L. ${action}`
}

/** How a series moves in its charge: "It is rising by 10 mg/L a week." Of counts the slope is of the exponent. */
export function sayCourse(
  trend: { slope: number; direction: 'rising' | 'falling' | 'none' } | null,
  { unit, isCount }: { unit: string; isCount: boolean },
  reader: NumberReader = {},
): string {
  if (trend === null) return 'Too few of this charge to tell whether it moves.'
  if (trend.direction === 'none') return 'In this charge it only scatters so far.'
  const by = Math.abs(trend.slope)
  const amount = `${sayNumber(by, 2, reader, 0)} ${unit}`.trim()
  const how = isCount ? `by a factor of ${sayNumber(10 ** by, 1, reader, 0)} a week` : `by ${amount} a week`
  return `In this charge it is ${trend.direction} ${how}.`
}

const levelWords: Record<LimitLevel, string> = {
  guidance: 'guidance',
  shop: 'the shop',
  fluid: 'the fluid',
  work: 'the work done',
  sump: 'this sump',
}

/** Who sets a limit. */
export const sayLevel = (level: LimitLevel): string => levelWords[level]

const quantityWords: Record<LimitedQuantity, { name: string; unit: string; decimals: number }> = {
  concentration: { name: 'Concentration', unit: ' %', decimals: 1 },
  ph: { name: 'pH', unit: '', decimals: 1 },
  hardness: { name: 'Hardness', unit: ' ppm', decimals: 0 },
  chloride: { name: 'Chloride', unit: ' mg/L', decimals: 0 },
  conductivity: { name: 'Conductivity', unit: ' mS/cm', decimals: 2 },
  bacteria: { name: 'Bacteria', unit: ' CFU/mL', decimals: 0 },
  trampOil: { name: 'Tramp oil', unit: ' %', decimals: 1 },
  nitrite: { name: 'Nitrite', unit: ' mg/L', decimals: 0 },
  waterNitrate: { name: 'Nitrate of the make-up water', unit: ' mg/L', decimals: 0 },
  level: { name: 'Level', unit: ' % of the mark', decimals: 0 },
}
const endWords: Record<LimitEnd, string> = {
  low: 'at least',
  target: 'target',
  high: 'at most',
  reasonable: 'no longer good from',
  poor: 'poor from',
  act: 'act on a fall of more than',
  change: 'change at a fall of more than',
}

/** "Nitrite at most 20 mg/L". */
export function sayLimit({ quantity, end, value }: OfferedLimit, reader: NumberReader = {}): string {
  const { name, unit, decimals } = quantityWords[quantity]
  return `${name}: ${endWords[end]} ${sayNumber(value, decimals, reader, 0)}${unit}`
}

/** What of a limit was not granted: "This sump asks for 50 mg/L, which is looser: it does not count." Empty without that. */
export function sayRefused({ refused }: SettledLimit, reader: NumberReader = {}): string {
  if (refused === null) return ''
  const { unit, decimals } = quantityWords[refused.quantity]
  return `${upperFirst(levelWords[refused.level])} asks for ${sayNumber(refused.value, decimals, reader, 0)}${unit}, which is looser: it does not count.`
}

/** Words as a sentence begins; pH stays as it is written. */
export const upperFirst = (words: string): string =>
  words.startsWith('pH') ? words : words[0]!.toUpperCase() + words.slice(1)
