import {
  type CalendarTest,
  calendarTests,
  germClass,
  type LimitEnd,
  type LimitedQuantity,
  mayBeOver,
  nitriteInterval,
  type Reader,
  type SettledLimit,
  say,
  sayAction,
  sayCalm,
  sayGerms,
  sayInterval,
  sayNitriteOver,
  sayPh,
  sayReported,
  saySlide,
  saySource,
  testDay,
  testInterval,
} from '@sumpbook/fluid'
import { dayText, type ShopClock } from '../estimate/shop-clock.ts'
import type { Sample } from '../samples/fold-samples.ts'
import type { Sump } from '../schema/things/index.ts'
import type { Value } from '../schema/values.ts'
import type { Things } from '../setup/things.ts'
import { usualEveryDays } from '../today/next-check.ts'
import type { Finding, SumpTest } from './answer-types.ts'
import { germClassesOf, limitOf } from './offered-limits.ts'
import { phOfSump } from './ph-of-sump.ts'
import { guidedInterval, ownInterval, type ShopGuidance } from './shop-guidance.ts'
import type { TestReading, ToldOfTests } from './told-tests.ts'

export interface TestsQuestion {
  sump: Sump
  told: ToldOfTests
  samples: readonly Sample[]
  fresh: TestReading | null
  limits: readonly SettledLimit[]
  guidance: ShopGuidance
  things: Things
  clock: ShopClock
  calendar: Parameters<typeof testDay>[1]
  /** Milliseconds since 1970-01-01 UTC. */
  ms: number
  reader: Pick<Reader, 'locale'>
}

/** The tests of a sump by guidance and shop, in the order in which they are done. */
export function testsOfSump(question: TestsQuestion): SumpTest[] {
  return calendarTests.map((test) => testOf(test, question))
}

function testOf(test: CalendarTest, question: TestsQuestion): SumpTest {
  const { guidance, clock, calendar, ms, things } = question
  const guided = guidedInterval(guidance, test)
  const dayOf = (at: string) => Math.floor(clock.at(Date.parse(at)))
  const charge = question.told.charges.at(-1)
  const results = question.told.readings
    .filter((reading) => test === 'nitrite' && reading.nitrite !== undefined && reading.at >= (charge?.at ?? ''))
    .map((reading) => ({ day: dayOf(reading.at), value: reading.nitrite as Value }))
  const calm = guided.calm === null ? null : nitriteInterval(results, guided.calm)
  const own = ownInterval(guidance, test)
  // Concentration alone is read once a week where nobody said anything, as Today has it.
  const shop = test === 'concentration' ? (things.shop.readEveryDays ?? usualEveryDays) : own
  const interval = testInterval({ guidance: calm?.days ?? guided.days, shop })
  const last = lastOf(test, question)
  const today = Math.floor(clock.at(ms))
  const isAskedAnew = test === 'bacteria' && isFreshSlideAsked(question.samples)
  const day =
    interval.outcome === 'none'
      ? null
      : isAskedAnew
        ? today
        : testDay({ last: last === null ? null : dayOf(last.at), everyDays: interval.days, today }, calendar)
  const isNobodys = test === 'concentration' && guided.days === null && things.shop.readEveryDays === undefined
  const growth = calm === null || guided.calm === null ? '' : sayCalm(calm, guided.calm)
  const why = [
    isNobodys
      ? say('Concentration every 7 days, where nobody said otherwise.')
      : sayInterval(interval, test, guidance.name),
    growth,
    test === 'ph' && last === null && charge !== undefined && interval.outcome === 'every'
      ? say('None was read since the charge: this is the value that later ones are held against.')
      : '',
    isAskedAnew ? say('The last slide was read after its window: a fresh one is due.') : '',
  ]
  return {
    test,
    last,
    interval,
    dueOn: day === null ? null : dayText(day),
    isDue: day !== null && day <= today,
    why: why.filter((sentence) => sentence !== '').join(' '),
    source: guided.rule === null ? null : saySource(guided.rule.source),
  }
}

const isFreshSlideAsked = (samples: readonly Sample[]) => {
  const last = samples.filter(({ method }) => method === 'dip slide').at(-1)
  return last?.state === 'answered' && last.result?.slide?.isFreshSlideDue === true
}

/** The last one of a test that counts towards its interval. pH counts within its charge alone: a fresh one has a value of its own. */
function lastOf(test: CalendarTest, { told, samples }: TestsQuestion): SumpTest['last'] {
  const of = (found: { id: string; at: string } | undefined) =>
    found === undefined ? null : { entry: found.id, at: found.at }
  switch (test) {
    case 'senses':
      return told.looks.at(-1) ?? null
    case 'concentration':
      return told.strengths.at(-1) ?? null
    case 'ph': {
      const since = told.charges.at(-1)?.at ?? ''
      return of(told.readings.findLast(({ ph, at }) => ph !== undefined && at >= since))
    }
    case 'nitrite':
      return of(told.readings.findLast(({ nitrite }) => nitrite !== undefined))
    case 'hardness':
      return of(told.readings.findLast(({ hardness }) => hardness !== undefined))
    case 'bacteria': {
      const slide = samples.findLast(({ method, state }) => method === 'dip slide' && state !== 'never-read')
      const read = told.readings.findLast(({ bacteria, answers }) => bacteria !== undefined && answers === undefined)
      return of(slide !== undefined && (read === undefined || slide.at >= read.at) ? slide : read)
    }
  }
}

const rank = { 'act-now': 0, act: 1, note: 2 }

/** What the last results of a sump say by the limits that hold for it. Results of an earlier charge say nothing of this one. */
export function findingsOfSump(question: TestsQuestion): Finding[] {
  const found = [nitriteFinding(question), phFinding(question), germFinding(question)]
  return found.filter((finding) => finding !== null).sort((a, b) => rank[a.urgency] - rank[b.urgency])
}

/** Since the charge that is in the sump. */
const lastWith = ({ told }: TestsQuestion, field: 'nitrite' | 'ph' | 'bacteria') => {
  const since = told.charges.at(-1)?.at ?? ''
  return told.readings.findLast((reading) => reading[field] !== undefined && reading.at >= since)
}

function nitriteFinding(question: TestsQuestion): Finding | null {
  const reading = lastWith(question, 'nitrite')
  const limit = limitOf(question.limits, 'nitrite', 'high')
  if (reading === undefined) return null
  const value = reading.nitrite as Value
  const { guidance, reader } = question
  const of = { about: 'nitrite', entry: reading.id, at: reading.at, source: sourceOf(limit) } as const
  if (limit === null || !mayBeOver(value, limit.value)) {
    return {
      ...of,
      urgency: 'note',
      outcome: null,
      sentence: say('Nitrite {value} mg/L.', { value: sayReported(value, 0, reader) }),
    }
  }
  const asked = guidance.rules.find(({ test, says }) => test === 'nitrite' && says.kind === 'ends')
  const action = asked === undefined ? say('Find where it comes from, and ask the supplier.') : sayAction(asked, reader)
  return { ...of, urgency: 'act-now', outcome: 'over', sentence: sayNitriteOver(value, limit.value, action, reader) }
}

/** A pH this far under its floor is a crash, as is a fall that ends the charge (common practice, no source). */
const crashUnderFloor = 0.5

function phFinding(question: TestsQuestion): Finding | null {
  const { limits, fresh, told, things, reader } = question
  const reading = lastWith(question, 'ph')
  if (reading === undefined) return null
  const value = (quantity: LimitedQuantity, end: LimitEnd) => limitOf(limits, quantity, end)
  const [act, change, low] = [value('ph', 'act'), value('ph', 'change'), value('ph', 'low')]
  const bounds = { act: act?.value ?? null, change: change?.value ?? null, floor: low?.value ?? null }
  if (act === null && change === null && low === null) return null
  const verdict = phOfSump(reading, { fresh, limits: bounds, told, things })
  const by = { 'below-floor': low, change, act, 'in-order': act ?? low, 'cannot-tell': act ?? low }[verdict.outcome]
  const ph = reading.ph as Value
  const isCrash =
    verdict.outcome === 'change' ||
    (verdict.outcome === 'below-floor' && !mayBeOver(ph, verdict.floor - crashUnderFloor))
  return {
    about: 'ph',
    entry: reading.id,
    at: reading.at,
    urgency: isCrash ? 'act-now' : verdict.outcome === 'below-floor' || verdict.outcome === 'act' ? 'act' : 'note',
    outcome: verdict.outcome,
    sentence: say('pH {value}. {verdict}', { value: sayReported(ph, 1, reader), verdict: sayPh(verdict, reader) }),
    source: sourceOf(by),
  }
}

const sourceOf = (limit: SettledLimit | null) => limit?.source ?? null

function germFinding(question: TestsQuestion): Finding | null {
  const { samples, told, limits, reader } = question
  const since = told.charges.at(-1)?.at ?? ''
  const sample = samples.findLast(
    ({ method, at, result }) => method === 'dip slide' && at >= since && result?.slide != null,
  )
  const plain = told.readings.findLast(
    ({ bacteria, answers, at }) => bacteria !== undefined && answers === undefined && at >= since,
  )
  const classes = germClassesOf(limits)
  if (sample !== undefined && (plain === undefined || sample.at >= plain.at)) {
    const { reading, slide } = sample.result!
    const count = reading.bacteria as Value
    return {
      about: 'bacteria',
      entry: reading.id,
      at: sample.at,
      urgency: slide!.germs === 'poor' ? 'act' : 'note',
      outcome: slide!.germs,
      sentence: saySlide(count, slide!, reader),
      source: classes?.source ?? null,
    }
  }
  if (plain === undefined) return null
  const count = plain.bacteria as Value
  const germs = classes === null ? null : germClass(count, classes.classes)
  return {
    about: 'bacteria',
    entry: plain.id,
    at: plain.at,
    urgency: germs === 'poor' ? 'act' : 'note',
    outcome: germs,
    sentence: sayGerms(count, germs, reader),
    source: classes?.source ?? null,
  }
}
