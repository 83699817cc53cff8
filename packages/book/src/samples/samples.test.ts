import { expect, test } from 'vitest'
import { readSumpCalendar } from '../guidance/read-calendar.ts'
import { guidedBook, told, unitedKingdom } from '../guidance/testing.ts'
import { testId } from '../testing.ts'
import { dueSamples } from './due-samples.ts'
import { readAnalytes } from './read-analytes.ts'
import { readSamples } from './read-samples.ts'

const slide = (n: number, at: string, more: Record<string, unknown> = {}) =>
  told(n, at, { pending: true, method: 'dip slide', ...more })
const result = (n: number, of: number, at: string, readAt: string, more: Record<string, unknown>) =>
  told(n, at, { answers: testId(of), readAt, method: 'dip slide', ...more })

async function samplesOf(entries: readonly unknown[], more: Record<string, unknown> = {}) {
  const book = await guidedBook({ guidance: unitedKingdom, entries, ...more })
  return book.ask((parts, now) => readSamples(parts, { at: now }))
}
async function dueOf(entries: readonly unknown[], more: Record<string, unknown> = {}) {
  const book = await guidedBook({ guidance: unitedKingdom, entries, ...more })
  return book.ask((parts, now) => dueSamples(parts, { at: now, until: now, reader: {} }))
}

// Now is Tuesday 3 March 2026, 10:00 UTC: samples of Monday 8:00 are 26 hours old, of Sunday 50, of Friday 98, of Tuesday 2.
test('a slide grows, is to be read, and is past its window', async () => {
  const states = async (at: string) => (await samplesOf([slide(1, at)])).pending[0]!.state
  expect(await states('2026-03-03')).toBe('growing')
  expect(await states('2026-03-02')).toBe('to-read')
  expect(await states('2026-02-27')).toBe('past')
})

test('the shop sets the hours of its slides by their instructions', async () => {
  const own = { bacteria: { readFromHours: 48, readToHours: 120 } }
  const { pending } = await samplesOf([slide(1, '2026-03-02')], { guidance: { ...unitedKingdom, own } })
  expect(pending).toMatchObject([
    { state: 'growing', readFrom: '2026-03-04T08:00:00.000Z', readTo: '2026-03-07T08:00:00.000Z' },
  ])
})

test('a result answers its sample, with its class and the source of that', async () => {
  const { pending, answered } = await samplesOf([
    slide(1, '2026-02-27'),
    result(2, 1, '2026-02-27', '2026-03-01T10:00:00Z', { bacteria: { low: 1e4, high: 1e5 } }),
  ])
  expect(pending).toEqual([])
  expect(answered).toMatchObject([
    { id: testId(1), state: 'answered', result: testId(2), at: '2026-02-27T08:00:00.000Z' },
  ])
  expect(answered[0]!.results[0]).toMatchObject({ says: '10,000 to 100,000 CFU/mL: reasonable.' })
  expect(answered[0]!.results[0]!.source).toContain('HSE')
})

test('a slide read past its window is accepted, says what it is worth, and makes a fresh one due', async () => {
  const entries = [slide(1, '2026-02-25'), result(2, 1, '2026-02-25', '2026-03-02T08:00:00Z', { bacteria: 1e6 })]
  const { answered } = await samplesOf(entries)
  expect(answered[0]!.results[0]!.slide).toEqual({
    timing: 'late',
    germs: 'poor',
    counts: 'at-most',
    isFreshSlideDue: true,
  })
  expect(answered[0]!.results[0]!.says).toContain('Read after its window')
  const book = await guidedBook({ guidance: unitedKingdom, entries })
  const { tests } = await book.ask((parts, now) => readSumpCalendar(parts, 's1', { at: now }))
  expect(tests.find(({ test }) => test === 'bacteria')).toMatchObject({ isDue: true, dueOn: '2026-03-03' })
})

test('a slide read too early and clean stays to be read; what is read in its time then counts', async () => {
  const early = [
    slide(1, '2026-03-01'),
    result(2, 1, '2026-03-01', '2026-03-01T20:00:00Z', { bacteria: { below: 1000 } }),
  ]
  expect((await samplesOf(early)).pending).toMatchObject([{ id: testId(1), state: 'to-read', result: null }])
  const { answered } = await samplesOf([
    ...early,
    result(3, 1, '2026-03-01', '2026-03-03T08:00:00Z', { bacteria: 1e5 }),
  ])
  expect(answered).toMatchObject([{ result: testId(3), results: [{ id: testId(2) }, { id: testId(3) }] }])
})

test('a withdrawn result leaves its sample to be read', async () => {
  const { pending, answered } = await samplesOf([
    slide(1, '2026-03-02'),
    result(2, 1, '2026-03-02', '2026-03-03T09:00:00Z', { bacteria: 1e3 }),
    { id: testId(3), at: '2026-03-03T09:30:00Z', kind: 'void', entry: testId(2) },
  ])
  expect(answered).toEqual([])
  expect(pending).toMatchObject([{ id: testId(1), state: 'to-read' }])
})

test('results that answer no sample are told apart with the reason', async () => {
  const other = { sump: 's2' }
  const { strays } = await samplesOf(
    [
      told(1, '2026-03-01', { ph: 9 }),
      result(2, 1, '2026-03-01', '2026-03-02T09:00:00Z', { bacteria: 1e3 }),
      result(3, 77, '2026-03-01', '2026-03-02T09:00:00Z', { bacteria: 1e3 }),
      slide(4, '2026-03-01'),
      result(5, 4, '2026-03-01', '2026-03-02T09:00:00Z', { bacteria: 1e3, ...other }),
      slide(6, '2026-02-20'),
      { id: testId(7), at: '2026-02-21T08:00:00Z', kind: 'void', entry: testId(6) },
      result(8, 6, '2026-02-20', '2026-02-22T09:00:00Z', { bacteria: 1e3 }),
      slide(9, '2026-03-02'),
      result(10, 9, '2026-03-01', '2026-03-01T09:00:00Z', { bacteria: 1e3 }),
    ],
    {
      sumps: [
        { id: 's1', name: 'Mill 1', fluid: 'f1' },
        { id: 's2', name: 'Mill 2', fluid: 'f1' },
      ],
    },
  )
  expect(Object.fromEntries(strays.map(({ id, why }) => [Number(id.slice(-2)), why]))).toEqual({
    2: 'no-sample',
    3: 'no-such-entry',
    5: 'other-sump',
    8: 'withdrawn',
    10: 'before-its-sample',
  })
  expect(strays.every(({ says }) => says.endsWith('.'))).toBe(true)
})

test('a result read before its own time of sampling is refused at its field', async () => {
  const book = await guidedBook({})
  await expect(book.put(result(2, 1, '2026-03-02', '2026-03-01T08:00:00Z', { bacteria: 1e3 }))).rejects.toMatchObject({
    code: 'refused-input',
    faults: [{ pointer: '/readAt' }],
  })
})

test('a result belongs to the charge that was in the sump when the sample was taken', async () => {
  const entries = [
    told(1, '2026-02-01', { kind: 'charge', volume: 200, strength: 8 }),
    slide(2, '2026-02-28'),
    told(3, '2026-03-01', { kind: 'charge', volume: 200, strength: 8 }),
    result(4, 2, '2026-02-28', '2026-03-02T08:00:00Z', { bacteria: 1e7 }),
  ]
  expect((await samplesOf(entries)).answered).toMatchObject([{ charge: { entry: testId(1) } }])
  const book = await guidedBook({ guidance: unitedKingdom, entries })
  const { findings } = await book.ask((parts, now) => readSumpCalendar(parts, 's1', { at: now }))
  expect(findings).toEqual([])
})

test('a slide that nobody read is given up after its week, or when a later one was taken', async () => {
  expect((await samplesOf([slide(1, '2026-02-10')])).neverRead).toMatchObject([{ state: 'never-read' }])
  const { pending, neverRead } = await samplesOf([slide(1, '2026-02-26'), slide(2, '2026-03-02')])
  expect(pending.map(({ id }) => id)).toEqual([testId(2)])
  expect(neverRead.map(({ id }) => id)).toEqual([testId(1)])
})

test('slides to read are due, a line each, and one line where they are many', async () => {
  const sumps = Array.from({ length: 5 }, (_, n) => ({ id: `m${n}`, name: `Mill ${n}`, fluid: 'f1' }))
  const some = (count: number) => sumps.slice(0, count).map(({ id }, n) => slide(n + 1, '2026-03-01', { sump: id }))
  expect(await dueOf(some(1), { sumps })).toMatchObject([
    {
      key: `result:${testId(1)}`,
      kind: 'result',
      headline: 'Read the dip slide of Mill 0',
      dueOn: '2026-03-02',
      page: `/tests/samples#sample-${testId(1)}`,
    },
  ])
  expect(await dueOf(some(5), { sumps })).toMatchObject([
    { key: 'results:dip slide:to-read', headline: 'Read 5 dip slides', sump: null, page: '/tests/samples' },
  ])
})

test('a sample at the laboratory is asked after when two weeks have passed', async () => {
  const sent = (at: string) => [told(1, at, { pending: true, method: 'laboratory' })]
  expect(await dueOf(sent('2026-02-20'))).toEqual([])
  expect(await dueOf(sent('2026-02-16'))).toMatchObject([{ headline: 'Ask for the report of Mill 1' }])
})

test('what a laboratory calls anything is followed, series by series, with its trend in the present charge', async () => {
  const report = (n: number, at: string, boron: number) =>
    told(n, at, { analytes: [{ name: 'Boron', value: boron, unit: 'mg/L', lab: 'a laboratory' }], ph: 9 })
  const book = await guidedBook({
    entries: [
      report(1, '2026-01-01', 500),
      told(2, '2026-01-05', { kind: 'charge', volume: 200 }),
      report(3, '2026-01-06', 100),
      report(4, '2026-01-13', 110),
      report(5, '2026-01-20', 120),
      report(6, '2026-01-27', 130),
    ],
  })
  const { series } = await book.ask((parts, now) => readAnalytes(parts, 's1', { at: now }))
  const boron = series.find(({ name }) => name === 'Boron')!
  expect(boron.points).toHaveLength(5)
  // 10 mg/L from week to week; the report before the charge is no part of it.
  expect(boron.trend).toMatchObject({ n: 4, slope: expect.closeTo(10, 9) })
  expect(series.map(({ name }) => name)).toEqual(['pH', 'Boron'])
})

test('germs are followed by powers of ten, from the middle of their class', async () => {
  const read = (n: number, at: string, power: number) =>
    told(n, at, { bacteria: { low: 10 ** power, high: 10 ** (power + 1) } })
  const book = await guidedBook({
    entries: [
      read(1, '2026-02-02', 3),
      read(2, '2026-02-09', 4),
      read(3, '2026-02-16', 5),
      told(4, '2026-02-23', { bacteria: { below: 1000 } }),
    ],
  })
  const { series } = await book.ask((parts, now) => readAnalytes(parts, 's1', { at: now }))
  expect(series[0]!.trend).toMatchObject({ n: 3, slope: expect.closeTo(1, 9) })
})
