import { expect, test } from 'vitest'
import { testId } from '../testing.ts'
import { readCalendar, readSumpCalendar } from './read-calendar.ts'
import { germany, guidedBook, told, unitedKingdom } from './testing.ts'

/** Of sump s1 on Tuesday 3 March 2026. */
async function calendarOf(...args: Parameters<typeof guidedBook>) {
  const book = await guidedBook(...args)
  return book.ask((parts, now) => readSumpCalendar(parts, 's1', { at: now }))
}
async function testsOf(...args: Parameters<typeof guidedBook>) {
  const { tests } = await calendarOf(...args)
  return Object.fromEntries(tests.map((one) => [one.test, one]))
}
const charge = (n: number, on: string, more: Record<string, unknown> = {}) =>
  told(n, on, { kind: 'charge', volume: 200, strength: 8, ...more })

test('with nothing chosen nothing is set, and what the packs say stands side by side', async () => {
  const { guidance, tests, unsettled, limits } = await calendarOf({})
  expect(guidance).toEqual({ outcome: 'none', name: 'none chosen' })
  expect(tests.filter(({ dueOn }) => dueOn !== null).map(({ test }) => test)).toEqual(['concentration'])
  const slides = unsettled.find(({ name }) => name === 'Dip slide: classes')!
  expect(slides.differs).toBe(true)
  expect(slides.says.map(({ text }) => text)).toEqual([
    'sets no figure',
    'under 10,000 good, from there reasonable, from 1,000,000 poor (CFU/mL)',
    'under 1000 good, from there reasonable, from 1,000,000 poor (CFU/mL)',
    'sets no figure',
  ])
  expect(slides.says[1]!.source).toContain('read 28 Nov 2026')
  expect(limits.map(({ level }) => level)).toEqual(['fluid', 'fluid', 'fluid'])
})

test('a pack sets the days of its tests, and says who does', async () => {
  const entries = [
    charge(1, '2026-02-20'),
    told(2, '2026-02-24', { ph: 9.2, nitrite: 4 }),
    told(3, '2026-02-26', { brix: 5 }),
  ]
  const { ph, nitrite, concentration, bacteria } = await testsOf({ guidance: germany, entries })
  // Tuesday 24 February and a week.
  expect(ph).toMatchObject({ dueOn: '2026-03-03', isDue: true, last: { entry: testId(2) } })
  expect(ph!.why).toBe(
    'pH every 7 days, by Germany: TRGS 611, DGUV Regel 109-003, DGUV Information 209-051, TRGS 611 of May 2007.',
  )
  expect(ph!.source).toContain('DGUV Regel 109-003')
  expect(nitrite).toMatchObject({ dueOn: '2026-03-03', isDue: true })
  expect(concentration).toMatchObject({ dueOn: '2026-03-05', isDue: false })
  expect(bacteria).toMatchObject({ dueOn: null, isDue: false, interval: { outcome: 'none' } })
})

test('three low results of nitrite in a row let the next one be four weeks away; one over brings the week back', async () => {
  const results = (...values: number[]) => [
    charge(1, '2026-01-05'),
    ...values.map((nitrite, n) => told(n + 2, `2026-0${n < 2 ? 1 : 2}-${['20', '27', '03', '10'][n]}`, { nitrite })),
  ]
  const nitriteOf = async (...values: number[]) =>
    (await testsOf({ guidance: germany, entries: results(...values) })).nitrite!
  // 3 February and 28 days are Tuesday 3 March.
  expect(await nitriteOf(4, 5, 6)).toMatchObject({ dueOn: '2026-03-03', interval: { days: 28 } })
  expect(await nitriteOf(4, 5, 6, 7)).toMatchObject({ dueOn: '2026-03-10', isDue: false })
  expect((await nitriteOf(4, 5, 6, 7)).why).toContain('The last 4 results in a row were under 10 mg/L.')
  expect(await nitriteOf(4, 5, 6, 12)).toMatchObject({ dueOn: '2026-02-17', interval: { days: 7 } })
  expect((await nitriteOf(4, 5, 6, 12)).why).toContain('The last result was not under 10 mg/L.')
})

test('results of nitrite of the charge before do not let the week grow', async () => {
  const entries = [
    charge(1, '2026-01-05'),
    told(2, '2026-01-20', { nitrite: 4 }),
    told(3, '2026-01-27', { nitrite: 4 }),
    charge(4, '2026-02-01'),
    told(5, '2026-02-24', { nitrite: 4 }),
  ]
  expect((await testsOf({ guidance: germany, entries })).nitrite).toMatchObject({
    dueOn: '2026-03-03',
    interval: { days: 7 },
  })
})

test('the shop’s own days shorten what a pack sets, and longer ones do not count and are said not to', async () => {
  const entries = [charge(1, '2026-02-20'), told(2, '2026-03-02', { ph: 9.2 })]
  const own = async (everyDays: number) =>
    (await testsOf({ guidance: { ...germany, own: { ph: { everyDays } } }, entries })).ph!
  expect(await own(2)).toMatchObject({ dueOn: '2026-03-04', interval: { level: 'shop' } })
  expect(await own(30)).toMatchObject({ dueOn: '2026-03-09', interval: { level: 'guidance', refused: 30 } })
  expect((await own(30)).why).toContain('The shop’s own 30 days are longer and do not count.')
})

test('the shop’s own values alone are a choice of their own', async () => {
  const guidance = { pack: 'own', own: { ph: { everyDays: 30, low: 8.8 } } }
  const {
    guidance: chosen,
    limits,
    tests,
  } = await calendarOf({ guidance, entries: [told(1, '2026-02-24', { ph: 9 })] })
  expect(chosen).toEqual({ outcome: 'own', name: 'the shop’s own values alone' })
  expect(tests.find(({ test }) => test === 'ph')).toMatchObject({ dueOn: '2026-03-26' })
  expect(limits.find(({ quantity }) => quantity === 'ph')).toMatchObject({ value: 8.8, levelName: 'the shop' })
})

test('a pack that this version does not have is said to be unknown, and none takes its place', async () => {
  const { guidance, tests } = await calendarOf({ guidance: { pack: 'atlantis', edition: '1' } })
  expect(guidance.outcome).toBe('unknown')
  expect(guidance.name).toContain('which this version does not have')
  expect(tests.filter(({ dueOn }) => dueOn !== null).map(({ test }) => test)).toEqual(['concentration'])
})

test('pH counts within its charge: a fresh one is due at once, and is what later ones are held against', async () => {
  const before = [charge(1, '2026-02-01'), told(2, '2026-02-27', { ph: 8.8 }), charge(3, '2026-03-02')]
  const { ph } = await testsOf({ guidance: germany, entries: before })
  expect(ph).toMatchObject({ dueOn: '2026-03-03', isDue: true, last: null })
  expect(ph!.why).toContain('this is the value that later ones are held against')
})

test('every limit says which level and which source it comes from', async () => {
  const fluids = [
    {
      id: 'f1',
      name: 'Semi 1',
      brixFactor: 1.6,
      limits: { ph: { low: 8.6 }, nitrite: { high: 15 }, hardness: { high: 400 } },
    },
  ]
  const sumps = [{ id: 's1', name: 'Mill 1', fluid: 'f1', metals: ['aluminium'], limits: { nitrite: { high: 50 } } }]
  const guidance = {
    ...germany,
    own: { hardness: { high: 350 } },
    forWork: [{ material: 'Aluminium', limits: { ph: { low: 8.4, high: 9.3 } } }],
  }
  const { limits } = await calendarOf({ guidance, fluids, sumps })
  const of = (quantity: string, end: string) => limits.find((one) => one.quantity === quantity && one.end === end)!
  expect(of('ph', 'low')).toMatchObject({ value: 8.4, level: 'work', source: 'the shop’s limits for Aluminium' })
  expect(of('ph', 'low').others).toMatchObject([{ level: 'fluid', source: 'limits of Semi 1' }])
  expect(of('ph', 'high')).toMatchObject({ value: 9.3, level: 'work' })
  expect(of('ph', 'act')).toMatchObject({ value: 0.5, level: 'guidance' })
  expect(of('hardness', 'high')).toMatchObject({ value: 400, level: 'fluid' })
  expect(of('nitrite', 'high')).toMatchObject({ value: 20, level: 'guidance', text: 'Nitrite: at most 20 mg/L' })
  expect(of('nitrite', 'high').source).toContain('TRGS 611')
  expect(of('nitrite', 'high').refused).toBe('This sump asks for 50 mg/L, which is looser: it does not count.')
})

test('limits for work follow the last job that was written down', async () => {
  const guidance = { ...germany, forWork: [{ process: 'grinding', limits: { ph: { low: 9 } } }] }
  const job = (n: number, process: string) => told(n, `2026-02-0${n}`, { kind: 'job', process })
  const lowOf = async (...jobs: unknown[]) =>
    (await calendarOf({ guidance, entries: jobs })).limits.find(
      ({ quantity, end }) => quantity === 'ph' && end === 'low',
    )
  expect(await lowOf(job(1, 'grinding'))).toMatchObject({ value: 9, level: 'work' })
  expect(await lowOf(job(1, 'grinding'), job(2, 'milling'))).toBeUndefined()
})

test('a fall of pH of more than 0.5 from the fresh value is found, with its rule', async () => {
  const entries = [
    charge(1, '2026-02-02'),
    told(2, '2026-02-03', { ph: 9.3, brix: 5 }),
    told(3, '2026-03-02', { ph: 8.7, brix: 5 }),
  ]
  const { findings } = await calendarOf({ guidance: germany, entries })
  expect(findings).toMatchObject([{ about: 'ph', urgency: 'act', outcome: 'act', entry: testId(3) }])
  expect(findings[0]!.sentence).toBe(
    'pH 8.7. pH stands 0.6 under its fresh value. Find the cause before anything is added.',
  )
  expect(findings[0]!.source).toContain('DGUV Regel 109-003')
})

test('a fresh value older than the days that are read of the journal is looked up', async () => {
  const entries = [charge(1, '2025-06-02'), told(2, '2025-06-03', { ph: 9.6 }), told(3, '2026-03-02', { ph: 8.5 })]
  const { findings } = await calendarOf({ guidance: germany, entries })
  expect(findings).toMatchObject([{ about: 'ph', urgency: 'act-now', outcome: 'change' }])
})

test('a first pH long after the charge is no fresh value', async () => {
  const entries = [charge(1, '2026-01-05'), told(2, '2026-02-10', { ph: 9.3 }), told(3, '2026-03-02', { ph: 8.5 })]
  expect((await calendarOf({ guidance: germany, entries })).findings).toMatchObject([
    { urgency: 'note', outcome: 'cannot-tell' },
  ])
})

test('half-unit strips cannot see a fall of 0.5, and are said not to', async () => {
  const instruments = [{ id: 'strips', name: 'Strips', kind: 'strip', pads: [7, 7.5, 8, 8.5, 9, 9.5, 10] }]
  const entries = [
    charge(1, '2026-02-02'),
    told(2, '2026-02-03', { ph: 9.5, instrument: 'strips' }),
    told(3, '2026-03-02', { ph: 9, instrument: 'strips' }),
  ]
  const { findings } = await calendarOf({ guidance: germany, entries, instruments })
  expect(findings[0]).toMatchObject({ outcome: 'cannot-tell' })
  expect(findings[0]!.sentence).toContain('half-unit strips cannot see 0.5')
})

test('nitrite over its limit cannot wait, and ends with the charge', async () => {
  const entries = [charge(1, '2026-02-02'), told(2, '2026-03-02', { nitrite: 25 })]
  const { findings } = await calendarOf({ guidance: germany, entries })
  expect(findings).toMatchObject([{ about: 'nitrite', urgency: 'act-now', outcome: 'over' }])
  expect(findings[0]!.sentence).toMatch(
    /^Nitrite 25 mg\/L, over the limit of 20 mg\/L\. Change all or part of the fluid/,
  )
  const changed = [...entries, charge(3, '2026-03-03')]
  expect((await calendarOf({ guidance: germany, entries: changed })).findings).toEqual([])
})

test('a strip’s class of nitrite counts as over the limit where it may be', async () => {
  const urgencyOf = async (nitrite: unknown) =>
    (await calendarOf({ guidance: germany, entries: [told(1, '2026-03-02', { nitrite })] })).findings[0]!.urgency
  expect(await urgencyOf({ low: 10, high: 25 })).toBe('act-now')
  expect(await urgencyOf({ low: 10, high: 20 })).toBe('note')
})

test('a slide is judged by the edition that was chosen', async () => {
  const entries = [told(1, '2026-03-02', { bacteria: { low: 1000, high: 10_000 } })]
  const germsOf = async (edition: string) =>
    (await calendarOf({ guidance: { pack: 'united-kingdom', edition }, entries })).findings[0]!
  expect(await germsOf('current')).toMatchObject({ outcome: 'good', sentence: '1000 to 10,000 CFU/mL: good.' })
  expect(await germsOf('2012')).toMatchObject({ outcome: 'reasonable' })
  expect((await germsOf('2012')).source).toContain('28 November 2012')
})

test('under a fluid’s limit alone no slide is called good', async () => {
  const fluids = [{ id: 'f1', name: 'Semi 1', limits: { bacteria: { high: 1e6 } } }]
  const { findings } = await calendarOf({ fluids, entries: [told(1, '2026-03-02', { bacteria: 1e4 })] })
  expect(findings).toMatchObject([{ outcome: 'under-limit', sentence: '10,000 CFU/mL: under the limit.' }])
})

test('the choice of a day holds from that day on', async () => {
  const setup = {
    id: testId(1),
    at: '2026-03-01T09:00:00Z',
    kind: 'setup',
    about: { kind: 'shop' },
    changes: { guidance: germany },
    was: { guidance: null },
  }
  const book = await guidedBook({ entries: [setup] })
  const outcomeAt = async (at: string) =>
    (await book.ask((parts) => readSumpCalendar(parts, 's1', { at: new Date(at) }))).guidance.outcome
  expect(await outcomeAt('2026-02-27T09:00:00Z')).toBe('none')
  expect(await outcomeAt('2026-03-02T09:00:00Z')).toBe('chosen')
})

test('a straight oil has no such tests', async () => {
  const fluids = [{ id: 'f1', name: 'Oil', class: 'straight-oil' }]
  const { tests, limits } = await calendarOf({ guidance: germany, fluids })
  expect({ tests, limits }).toEqual({ tests: [], limits: [] })
})

test('a sump the book does not have is not found', async () => {
  const book = await guidedBook({})
  await expect(book.ask((parts, now) => readSumpCalendar(parts, 'nobody', { at: now }))).rejects.toMatchObject({
    code: 'not-found',
  })
})

test('the shop’s calendar has every sump in walking order', async () => {
  const sumps = [
    { id: 'a', name: 'Mill 2', fluid: 'f1', order: 2 },
    { id: 'b', name: 'Mill 1', fluid: 'f1', order: 1 },
  ]
  const book = await guidedBook({ guidance: unitedKingdom, sumps })
  const { sumps: found, guidance } = await book.ask((parts, now) => readCalendar(parts, { at: now }))
  expect(guidance.name).toBe('United Kingdom: HSE, page current in 2026')
  expect(found.map(({ name }) => name)).toEqual(['Mill 1', 'Mill 2'])
  expect(found[0]!.tests.filter(({ isDue }) => isDue).map(({ test }) => test)).toEqual([
    'senses',
    'concentration',
    'ph',
    'bacteria',
  ])
})
