import type { Reported } from '../estimate/events.ts'
import type { GermClass } from '../guidance/germ-class.ts'
import type { CalmInterval, CalmRule } from '../guidance/nitrite-interval.ts'
import type { GuidanceRule, GuidanceSource, GuidedTest, RuleSays, WordFigures } from '../guidance/pack.ts'
import type { PhVerdict } from '../guidance/ph-verdict.ts'
import { rangeOf } from '../guidance/reported-range.ts'
import type { LimitEnd, LimitedQuantity, LimitLevel, OfferedLimit, SettledLimit } from '../guidance/settled-limits.ts'
import type { SlideRead } from '../guidance/slide-read.ts'
import type { TestInterval } from '../guidance/test-interval.ts'
import { datesLocale, message, say } from '../words/index.ts'
import { sayList } from './phrases.ts'
import { sayUnit } from './unit-word.ts'
import { type Reader, sayNumber } from './units.ts'

type NumberReader = Pick<Reader, 'locale'>

/** What is tested, as people call it. */
export const sayTest = (test: GuidedTest): string => say(testWords[test])

const testWords: Record<GuidedTest, string> = {
  senses: message('look and smell'),
  level: message('level'),
  concentration: message('concentration'),
  ph: message('pH'),
  nitrite: message('nitrite'),
  bacteria: message('dip slide'),
  hardness: message('hardness'),
  trampOil: message('tramp oil'),
  waterNitrate: message('nitrate of the make-up water'),
  mist: message('mist in the air'),
}

/** "every 7 days", "every day". */
export const sayEvery = (days: number): string => say('{days, plural, one {every day} other {every # days}}', { days })

/** What a rule says, in a few words: "every 7 days", "at most 20 mg/L", "under 10,000 good, …". */
export function sayRule(says: RuleSays, reader: NumberReader = {}): string {
  const figure = (value: number) => sayNumber(value, 2, reader, 0)
  switch (says.kind) {
    case 'every':
      return sayEvery(says.days)
    case 'every-unless-calm': {
      const { below, inARow, longest } = says.calm
      return say('{every}; up to {longest} days after {inARow} results in a row under {below} mg/L', {
        every: sayEvery(says.days),
        longest: figure(longest),
        inARow: figure(inARow),
        below: figure(below),
      })
    }
    case 'classes': {
      const { reasonable, poor } = says.classes
      return reasonable === null
        ? say('from {poor} poor (CFU/mL)', { poor: figure(poor) })
        : say('under {reasonable} good, from there reasonable, from {poor} poor (CFU/mL)', {
            reasonable: figure(reasonable),
            poor: figure(poor),
          })
    }
    case 'ends': {
      const unit = says.unit === '' ? '' : ` ${say(says.unit, written(says.figures, reader))}`
      const low = says.low === undefined ? null : `${figure(says.low)}${unit}`
      const high = says.high === undefined ? null : `${figure(says.high)}${unit}`
      if (low === null) return high === null ? '' : say('at most {high}', { high })
      return high === null ? say('at least {low}', { low }) : say('at least {low}, at most {high}', { low, high })
    }
    case 'fall':
      return says.asks === 'act'
        ? say('fall of more than {by} from the fresh fill: act', { by: figure(says.by) })
        : say('fall of more than {by} from the fresh fill: change', { by: figure(says.by) })
    case 'no-figure':
      return say('sets no figure')
  }
}

/** What a rule asks to be done. */
export const sayAction = ({ action, figures }: Pick<GuidanceRule, 'action' | 'figures'>, reader: NumberReader = {}) =>
  say(action, written(figures, reader))

const written = (figures: WordFigures = {}, reader: NumberReader) =>
  Object.fromEntries(Object.entries(figures).map(([blank, figure]) => [blank, sayNumber(figure, 2, reader, 0)]))

/** "TRGS 611 …, 5.3, edition May 2007": where a rule stands. What we call a place or an edition is said; a printed title stays as printed. */
export const sayPassage = ({ document, section, edition }: GuidanceSource): string =>
  say('{document}, {section}, edition {edition}', {
    document: say(document),
    section: say(section),
    edition: say(edition),
  })

/** "TRGS 611 …, 5.3, edition May 2007; read 28 Nov 2026". */
export function saySource(source: GuidanceSource, reader: NumberReader = {}): string {
  const { readOn, tag } = source
  const known = say(
    '{tag, select, read {read} memory {from memory, not read again} other {common practice, no source}}{hasDay, select, yes { {day}} other {}}',
    {
      tag: tag === 'from memory' ? 'memory' : tag,
      hasDay: readOn === null ? 'no' : 'yes',
      day: readOn === null ? '' : sayDate(readOn, reader),
    },
  )
  return say('{passage}; {known}', { passage: sayPassage(source), known })
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
  if (interval.outcome === 'none') return say('{what}: nobody sets an interval.', { what })
  const { days, level, refused } = interval
  const every = sayEvery(days)
  const asked =
    level === 'guidance'
      ? say('{what} {every}, by {pack}.', { what, every, pack })
      : say('{what} {every}, by the shop’s own rule.', { what, every })
  if (refused === null) return asked
  const clipped = say('The shop’s own {refused, plural, one {# day} other {# days}} are longer and do not count.', {
    refused,
  })
  return `${asked} ${clipped}`
}

/** Why an interval that may grow is as long as it is. */
export function sayCalm({ run, because }: CalmInterval, { calm }: CalmRule): string {
  const below = sayNumber(calm.below, 2, {}, 0)
  if (because === 'calm') return say('The last {run} results in a row were under {below} mg/L.', { run, below })
  if (because === 'over') return say('The last result was not under {below} mg/L.', { below })
  return say(
    '{run, plural, =0 {No result} one {One result} other {# results}} in a row under {below} mg/L; {inARow} let it grow longer.',
    { run, below, inARow: calm.inARow },
  )
}

/** "pH, nitrite and dip slide of Mill 7 are due". */
export const sayTestsDue = (tests: readonly GuidedTest[], of: string): string =>
  say('{tests} of {of} {count, plural, one {is} other {are}} due', {
    tests: upperFirst(sayList(tests.map(sayTest))),
    of,
    count: tests.length,
  })

const tenth = (value: number, reader: NumberReader) => sayNumber(value, 1, reader)

/** What pH says, with what to do. */
export function sayPh(verdict: PhVerdict, reader: NumberReader = {}): string {
  const fall = verdict.fall === null ? null : tenth(Math.max(0, verdict.fall), reader)
  switch (verdict.outcome) {
    case 'below-floor': {
      const floor = tenth(verdict.floor, reader)
      return fall === null
        ? say('pH is under its floor of {floor}. Find the cause before anything is added.', { floor })
        : say(
            'pH is under its floor of {floor}, {fall} under its fresh value. Find the cause before anything is added.',
            {
              floor,
              fall,
            },
          )
    }
    case 'change':
      return say(
        'pH stands {fall} under its fresh value: that is a reason to change the charge. Find the cause first.',
        { fall: fall! },
      )
    case 'act':
      return say('pH stands {fall} under its fresh value. Find the cause before anything is added.', { fall: fall! })
    case 'in-order':
      return fall === null
        ? say('pH is at or above its floor.')
        : say('pH stands {fall} under its fresh value.', { fall })
    case 'cannot-tell':
      return say(cannotTell[verdict.because], {
        fall: tenth(0.5, reader),
        low: tenth(0.2, reader),
        high: tenth(0.3, reader),
      })
  }
}

const cannotTell = {
  'no-fresh': message('No pH was read soon after the charge: a fall cannot be told from this reading.'),
  'steps-too-wide': message(
    'The steps of these strips are too wide to see such a fall; half-unit strips cannot see {fall}. Read it again with steps of {low} to {high} or a meter.',
  ),
  'other-strength': message(
    'The fluid stands at another strength than when it was fresh, and pH follows strength: bring it to its target and read again.',
  ),
}

/** A figure or a class: "12", "1,000 to 10,000", "under 10", "10,000,000 or more". */
export function sayReported(value: Reported, decimals: number, reader: NumberReader = {}): string {
  const { low, high } = rangeOf(value)
  const figure = (one: number) => sayNumber(one, decimals, reader, 0)
  if (low === high) return figure(low)
  if (high === Number.POSITIVE_INFINITY) return say('{low} or more', { low: figure(low) })
  return low === 0
    ? say('under {high}', { high: figure(high) })
    : say('{low} to {high}', { low: figure(low), high: figure(high) })
}

const germWords: Record<GermClass, string> = {
  good: message('good'),
  'under-limit': message('under the limit'),
  reasonable: message('reasonable'),
  poor: message('poor'),
}

/** A count with its class: "10,000 to 100,000 CFU/mL: reasonable." */
export function sayGerms(count: Reported, germs: GermClass | null, reader: NumberReader = {}): string {
  const figure = `${sayReported(count, 0, reader)} ${sayUnit('CFU/mL')}`
  return germs === null ? `${figure}.` : say('{figure}: {germs}.', { figure, germs: say(germWords[germs]) })
}

/** What a slide says: "10,000 to 100,000 CFU/mL: reasonable." */
export function saySlide(
  count: Reported,
  { germs, counts, timing, isFreshSlideDue }: SlideRead,
  reader: NumberReader = {},
): string {
  const figure = `${sayReported(count, 0, reader)} ${sayUnit('CFU/mL')}`
  const timingWords = timing === 'in-window' ? null : timing === 'early' ? early[counts] : late[counts]
  const words = [
    counts === 'at-least' && germs !== null
      ? say('{figure}: at least {germs}.', { figure, germs: say(germWords[germs]) })
      : sayGerms(count, germs, reader),
    ...(timingWords === null ? [] : [say(timingWords)]),
    ...(isFreshSlideDue ? [say('Treat it as it reads, and take a fresh slide today.')] : []),
  ]
  return words.join(' ')
}

type Counts = SlideRead['counts']
const early: Record<Counts, string | null> = {
  'not-yet': message('Read before its time: it says nothing yet. Read it again within its hours.'),
  'at-least': message('Read before its time: what is there counts, more may come.'),
  'as-read': null,
  'at-most': null,
}
const late: Record<Counts, string | null> = {
  'as-read': message('Read after its window; longer would only have shown more.'),
  'at-most': message('Read after its window: it may have overgrown and counts as at most that.'),
  'not-yet': null,
  'at-least': null,
}

/** That a nitrite result is over its limit, with what guidance asks for then. */
export function sayNitriteOver(value: Reported, limit: number, action: string, reader: NumberReader = {}): string {
  return say('Nitrite {found} mg/L, over the limit of {limit} mg/L. {action}', {
    found: sayReported(value, 0, reader),
    limit: sayNumber(limit, 0, reader),
    action,
  })
}

/** How a series moves in its charge: "It is rising by 10 mg/L a week." Of counts the slope is of the exponent. */
export function sayCourse(
  trend: { slope: number; direction: 'rising' | 'falling' | 'none' } | null,
  { unit, isCount }: { unit: string; isCount: boolean },
  reader: NumberReader = {},
): string {
  if (trend === null) return say('Too few of this charge to tell whether it moves.')
  const { direction, slope } = trend
  if (direction === 'none') return say('In this charge it only scatters so far.')
  const by = Math.abs(slope)
  const factor = 10 ** by
  // A change that would be said as none: of counts by a factor of 1, else by 0.
  if (isCount ? factor < 1.05 : by < 0.005) return say('In this charge it hardly changes.')
  return isCount
    ? say('In this charge it is {direction, select, rising {rising} other {falling}} by a factor of {factor} a week.', {
        direction,
        factor: sayNumber(factor, 1, reader, 0),
      })
    : say('In this charge it is {direction, select, rising {rising} other {falling}} by {amount} a week.', {
        direction,
        amount: `${sayNumber(by, 2, reader, 0)} ${sayUnit(unit)}`.trim(),
      })
}

const levelWords: Record<LimitLevel, string> = {
  guidance: message('guidance'),
  shop: message('the shop'),
  fluid: message('the fluid'),
  work: message('the work done'),
  sump: message('this sump'),
}

/** Who sets a limit. */
export const sayLevel = (level: LimitLevel): string => say(levelWords[level])

const quantityWords: Record<LimitedQuantity, { name: string; unit: string; decimals: number }> = {
  concentration: { name: message('Concentration'), unit: '%', decimals: 1 },
  ph: { name: message('pH'), unit: '', decimals: 1 },
  hardness: { name: message('Hardness'), unit: 'ppm', decimals: 0 },
  chloride: { name: message('Chloride'), unit: 'mg/L', decimals: 0 },
  conductivity: { name: message('Conductivity'), unit: 'mS/cm', decimals: 2 },
  bacteria: { name: message('Bacteria'), unit: 'CFU/mL', decimals: 0 },
  trampOil: { name: message('Tramp oil'), unit: '%', decimals: 1 },
  nitrite: { name: message('Nitrite'), unit: 'mg/L', decimals: 0 },
  waterNitrate: { name: message('Nitrate of the make-up water'), unit: 'mg/L', decimals: 0 },
  level: { name: message('Level'), unit: '%', decimals: 0 },
}
const endWords: Record<LimitEnd, string> = {
  low: message('{quantity}: at least {value}'),
  target: message('{quantity}: target {value}'),
  high: message('{quantity}: at most {value}'),
  reasonable: message('{quantity}: no longer good from {value}'),
  poor: message('{quantity}: poor from {value}'),
  act: message('{quantity}: act on a fall of more than {value}'),
  change: message('{quantity}: change at a fall of more than {value}'),
}

/** "Nitrite: at most 20 mg/L". */
export function sayLimit(limit: OfferedLimit, reader: NumberReader = {}): string {
  const quantity = say(quantityWords[limit.quantity].name)
  return say(endWords[limit.end], { quantity, value: limitValue(limit, reader) })
}

function limitValue({ quantity, value }: Pick<OfferedLimit, 'quantity' | 'value'>, reader: NumberReader): string {
  const { unit, decimals } = quantityWords[quantity]
  const figure = `${sayNumber(value, decimals, reader, 0)} ${sayUnit(unit)}`.trim()
  return quantity === 'level' ? say('{percent} of the mark', { percent: figure }) : figure
}

/** What of a limit was not granted: "This sump asks for 50 mg/L, which is looser: it does not count." Empty without that. */
export function sayRefused({ refused }: SettledLimit, reader: NumberReader = {}): string {
  if (refused === null) return ''
  return say(
    '{level, select, guidance {Guidance} shop {The shop} fluid {The fluid} work {The work done} other {This sump}} asks for {value}, which is looser: it does not count.',
    { level: refused.level, value: limitValue(refused, reader) },
  )
}

/** Words as a sentence begins; pH stays as it is written. */
export const upperFirst = (words: string): string =>
  words.startsWith('pH') ? words : words[0]!.toUpperCase() + words.slice(1)
