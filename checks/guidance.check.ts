/**
 * The figures of the guidance packs against what was published, and their rules worked by hand.
 *
 * Nitrite and nitrate: TRGS 611, edition May 2007, 5.2 and 5.3, read in copies of accident insurers and publishers: make-up water at most
 * 50 mg/L nitrate, else blended with demineralised water; nitrite weekly; three times in a row under 10 mg/L let it be up to four weeks; over
 * 10 mg/L weekly again; over 20 mg/L change, change in part, or an inhibitor. Values exactly 10 are open in the text: taken as not under 10.
 * pH: DGUV Regel 109-003, Annex 3: a fall of more than 0.5 from the fresh fill is acted on (read), of more than 1.0 ends the charge (from
 * memory); 7.1.1: strips in steps of 0.2 to 0.3 (read). Intervals: the same annex; look daily, the rest weekly (read).
 * Slides: HSE (UK), bacterial contamination, as the page stands in 2026 (10⁴ and 10⁶; that the last bound is poor from memory) and as it stood
 * on 28 November 2012 (10³ and 10⁶), both read; checks daily and weekly (read).
 * United States: keep pH above 8.5 (Washington State, read); 30 % under the full mark is a sign to act (OSHA manual, read in a summary);
 * NIOSH 98-102, 0.4 mg/m³ thoracic (read).
 * Blending: 70 mg/L with demineralised water to 50 mg/L takes 1 − 50/70 = 28.57 % of it (computed).
 * Expected values are typed from there; tolerance: none but where a decimal is written.
 */
import { expect, test } from 'vitest'
import {
  alligation,
  type GuidanceRule,
  germClass,
  guidancePacks,
  nitriteInterval,
  phVerdict,
  slideRead,
  testDay,
  testInterval,
} from '../packages/fluid/src/index.ts'

const ruleOf = (pack: string, edition: string, test: string, kind: string): GuidanceRule =>
  guidancePacks
    .find(({ id }) => id === pack)!
    .editions.find(({ id }) => id === edition)!
    .rules.find((rule) => rule.test === test && rule.says.kind === kind)!

test.each([
  ['germany', '2007', 'senses', 1],
  ['germany', '2007', 'concentration', 7],
  ['germany', '2007', 'ph', 7],
  ['united-kingdom', 'current', 'senses', 1],
  ['united-kingdom', 'current', 'concentration', 7],
  ['united-kingdom', 'current', 'ph', 7],
  ['united-kingdom', 'current', 'bacteria', 7],
  ['united-kingdom', '2012', 'bacteria', 7],
])('%s %s: %s at least every %d days', (pack, edition, tested, days) => {
  expect(ruleOf(pack, edition, tested, 'every').says).toEqual({ kind: 'every', days })
})

test('TRGS 611: at most 20 mg/L nitrite in the mix and 50 mg/L nitrate in the make-up water', () => {
  expect(ruleOf('germany', '2007', 'nitrite', 'ends').says).toMatchObject({ high: 20 })
  expect(ruleOf('germany', '2007', 'waterNitrate', 'ends').says).toMatchObject({ high: 50 })
})

test('DGUV Information 209-051 sets no limit for germs, and no plan of tests in the United States was found to set days', () => {
  expect(ruleOf('germany', '2007', 'bacteria', 'no-figure').says).toEqual({ kind: 'no-figure', about: 'classes' })
  expect(ruleOf('united-states', '2001', 'concentration', 'no-figure').says).toMatchObject({ about: 'interval' })
})

test('United States: pH at least 8.5, level at least 70 % of the mark, 0.4 mg/m³ of thoracic mist', () => {
  expect(ruleOf('united-states', '2001', 'ph', 'ends').says).toMatchObject({ low: 8.5 })
  expect(ruleOf('united-states', '2001', 'level', 'ends').says).toMatchObject({ low: 100 - 30 })
  expect(ruleOf('united-states', '2001', 'mist', 'ends').says).toMatchObject({ high: 0.4 })
})

const classesOf = (edition: string) => {
  const { says } = ruleOf('united-kingdom', edition, 'bacteria', 'classes')
  if (says.kind !== 'classes') throw new TypeError('no classes')
  return says.classes
}

test.each([
  ['current', 9999, 'good'],
  ['current', 1e4, 'reasonable'],
  ['current', 999_999, 'reasonable'],
  ['current', 1e6, 'poor'],
  ['2012', 999, 'good'],
  ['2012', 1e3, 'reasonable'],
  ['2012', 9999, 'reasonable'],
  ['2012', 1_000_001, 'poor'],
])('HSE, %s page: %d CFU/mL is %s', (edition, count, expected) => {
  expect(germClass(count, classesOf(edition))).toBe(expected)
})

test('a slide between 10³ and 10⁴ is good by the current page and reasonable by that of 2012: the editions conflict', () => {
  const slide = { low: 1e3, high: 1e4 }
  expect(germClass(slide, classesOf('current'))).toBe('good')
  expect(germClass(slide, classesOf('2012'))).toBe('reasonable')
})

const nitriteRule = (() => {
  const { says } = ruleOf('germany', '2007', 'nitrite', 'every-unless-calm')
  if (says.kind !== 'every-unless-calm') throw new TypeError('no such rule')
  return says
})()

/** After each result the interval that follows, worked by hand from 5.3 (1) and (2). Weekly results, then as the interval lets. */
test.each<[string, [day: number, value: number, next: number][]]>([
  [
    'three low results, then four-weekly as long as they stay low',
    [
      [0, 4, 7],
      [7, 6, 7],
      [14, 8, 28],
      [42, 9, 28],
      [70, 9.9, 28],
    ],
  ],
  [
    'a result over 10 brings the week back until three more are low',
    [
      [0, 5, 7],
      [7, 5, 7],
      [14, 5, 28],
      [42, 11, 7],
      [49, 9, 7],
      [56, 9, 7],
      [63, 9, 28],
    ],
  ],
  [
    'two low results and one over 10, over and over, never leave the week',
    [
      [0, 5, 7],
      [7, 5, 7],
      [14, 12, 7],
      [21, 5, 7],
      [28, 5, 7],
      [35, 15, 7],
    ],
  ],
  [
    'over 20 the week stays as well: what is to be done then is another matter',
    [
      [0, 5, 7],
      [7, 21, 7],
      [14, 5, 7],
    ],
  ],
])('nitrite by TRGS 611: %s', (_, course) => {
  for (const [n, [, , next]] of course.entries()) {
    const results = course.slice(0, n + 1).map(([day, value]) => ({ day, value }))
    expect(nitriteInterval(results, nitriteRule).days, `after result ${n + 1}`).toBe(next)
  }
})

test('four weeks are the longest the rule lets it be, whatever the shop asks for', () => {
  expect(testInterval({ guidance: nitriteRule.calm.longest, shop: 60 })).toMatchObject({ days: 28, refused: 60 })
})

// 2 March 2026 is a Monday; a week on is the 9th. With that Monday a holiday it is due on Friday the 6th: sooner, not later.
test('a weekly test on a closed day is due before it, not after it', () => {
  const day = (text: string) => Date.parse(text) / 86_400_000
  const closed = { workDays: [1, 2, 3, 4, 5], shutdowns: [{ from: day('2026-03-09'), to: day('2026-03-09') }] }
  expect(testDay({ last: day('2026-03-02'), everyDays: 7, today: day('2026-03-05') }, closed)).toBe(day('2026-03-06'))
})

const fallOf = (asks: string) => {
  const rules = guidancePacks[0]!.editions[0]!.rules
  const says = rules.map((rule) => rule.says).find((one) => one.kind === 'fall' && one.asks === asks)
  if (says?.kind !== 'fall') throw new TypeError('no such rule')
  return says.by
}

test.each([
  [9.3, 8.8, 'in-order'],
  [9.3, 8.7, 'act'],
  [9.3, 8.3, 'act'],
  [9.3, 8.2, 'change'],
])('DGUV 109-003: fresh at %d, now %d is %s', (fresh, now, expected) => {
  const at = (value: number) => ({ low: value, high: value })
  const asked = { now: at(now), fresh: at(fresh), strength: null, floor: null }
  expect(phVerdict({ ...asked, act: fallOf('act'), change: fallOf('change') }).outcome).toBe(expected)
})

// Steps of 0.3: 9.2–9.5 fresh and 8.3–8.6 now leave a fall of 0.6 to 1.2. Steps of 0.5: 9.0–9.5 and 8.5–9.0 leave 0 to 1.
test('steps of 0.3 see a fall of more than 0.5 that half-unit strips cannot', () => {
  const asked = { strength: null, floor: null, act: fallOf('act'), change: null }
  const fine = phVerdict({ ...asked, fresh: { low: 9.2, high: 9.5 }, now: { low: 8.3, high: 8.6 } })
  const coarse = phVerdict({ ...asked, fresh: { low: 9, high: 9.5 }, now: { low: 8.5, high: 9 } })
  expect([fine.outcome, coarse.outcome]).toEqual(['act', 'cannot-tell'])
})

test('water of 70 mg/L nitrate takes 28.6 % of demineralised water to come to 50', () => {
  const parts = alligation({ first: 70, second: 0, wanted: 50 })
  expect(parts.outcome === 'parts' && 100 * parts.second).toBeCloseTo(28.57, 2)
})

// Instructions of slide makers: bacteria after one to three days at 30 °C (common practice, no source).
test.each([
  [23, 'early'],
  [24, 'in-window'],
  [72, 'in-window'],
  [73, 'late'],
])('a slide read after %d hours is read %s', (hours, timing) => {
  const window = { fromHours: 24, toHours: 72 }
  expect(slideRead(1e5, hours, { window, classes: classesOf('current') }).timing).toBe(timing)
})
