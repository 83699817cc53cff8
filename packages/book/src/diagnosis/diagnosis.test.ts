import { expect, test } from 'vitest'
import { sourceOf } from '../import/sheet/sheet-source.ts'
import { emptyBook, smallShop, testId, testNow, testReading } from '../testing.ts'
import { readDiagnosis } from './read-diagnosis.ts'

/** 09:30 in the shop, so many days before the test's day. */
const at = (daysAgo: number) => new Date(Date.parse('2026-03-03T08:30:00Z') - daysAgo * 86_400_000).toISOString()

const fluid = {
  id: 'f1',
  name: 'Semi 1',
  class: 'semi-synthetic',
  brixFactor: 1.6,
  limits: {
    concentration: { low: 6, target: 8, high: 10 },
    ph: { low: 8.5, high: 9.5 },
    hardness: { high: 400 },
    bacteria: { high: 1e6 },
  },
}

async function bookWith(entries: Record<string, unknown>[]) {
  const book = await emptyBook()
  await book.importFile(
    sourceOf(
      'shop.json',
      Buffer.from(
        JSON.stringify(
          smallShop({
            fluids: [fluid],
            entries: entries.map((entry, n) => ({ id: testId(n + 1), sump: 's1', ...entry })),
          }),
        ),
      ),
    ),
  )
  return book
}

const diagnosed = async (entries: Record<string, unknown>[], when = testNow) =>
  (await bookWith(entries)).ask((parts) => readDiagnosis(parts, { sump: 's1', at: when }))

const charge = (daysAgo: number) => ({ at: at(daysAgo), kind: 'charge', volume: 200, strength: 8 })
const reading = (daysAgo: number, fields: Record<string, unknown>) => ({ at: at(daysAgo), kind: 'reading', ...fields })
const seen = (daysAgo: number, ...signs: string[]) => ({ at: at(daysAgo), kind: 'observation', signs })

test('readings of this charge, signs of the last days and limits of the fluid come to causes', async () => {
  const found = await diagnosed([
    charge(90),
    reading(89, { ph: 9.2 }),
    reading(3, { ph: 8.3, bacteria: { atLeast: 1e6 } }),
    seen(2, 'rancid smell'),
  ])
  expect(found.causes[0]?.cause).toBe('bacterial growth')
  expect(found.causes[0]?.because.join(' ')).toContain('pH 8.3 after 9.2 before')
  expect(found.stop.join(' ')).toContain('Dose nothing')
  expect(found.read.find(({ field }) => field === 'ph')).toMatchObject({ value: 8.3, days: 3, stale: false })
})

test('what was read of an earlier charge says nothing of this one', async () => {
  const found = await diagnosed([charge(90), reading(20, { ph: 7 }), seen(12, 'rancid smell'), charge(5)])
  expect(found.read).toEqual([])
  expect(found.symptoms.signs).toEqual(['fresh charge'])
  expect(found.causes).toEqual([])
})

test('a reading too old to count is shown with its age and not weighed', async () => {
  const found = await diagnosed([charge(90), reading(40, { ph: 7, hardness: 600 })])
  expect(found.read.map(({ field, days, stale }) => [field, days, stale])).toEqual([
    ['ph', 40, true],
    ['hardness', 40, false],
  ])
  expect(found.symptoms.readings.ph).toBeUndefined()
  expect(found.notes.join(' ')).toContain('Too old to count, read again: pH 7.0 of 40 days ago.')
  expect(found.causes[0]?.cause).toBe('minerals built up')
})

test('words that the list does not have stay in the entry and are named', async () => {
  const found = await diagnosed([seen(1, 'foam', 'sounds odd')])
  expect(found.observed[0]).toMatchObject({ signs: ['foam'], notUnderstood: ['sounds odd'] })
  expect(found.notes.join(' ')).toContain('“sounds odd”')
})

test('nothing after the time asked for counts, and withdrawn entries do not', async () => {
  const entries = [
    seen(5, 'foam'),
    seen(4, 'ammonia smell'),
    { at: at(3), kind: 'void', entry: testId(2), reason: 'another machine' },
    seen(1, 'slime'),
  ]
  expect((await diagnosed(entries)).symptoms.signs).toEqual(['foam', 'slime'])
  expect((await diagnosed(entries, new Date(at(2)))).symptoms.signs).toEqual(['foam'])
})

test('a low level with the strength at its target, by the estimate, is fluid that went out', async () => {
  const found = await diagnosed([
    charge(30),
    testReading(50, { at: at(1), brix: 5, volume: 140, pumps: 'stopped' }),
    testReading(51, { at: at(0), brix: 5, volume: 139, pumps: 'stopped' }),
  ])
  expect(found.causes[0]?.cause).toBe('carry-off or a leak')
})

test('two methods of the same days stand beside each other', async () => {
  const found = await diagnosed([
    charge(30),
    reading(2, { brix: 5.5 }),
    reading(1, { titration: 5 }),
    seen(1, 'oil film'),
  ])
  expect(found.symptoms.readings).toMatchObject({ titration: 5, concentration: 8.8 })
  expect(found.causes.slice(0, 3).map(({ cause }) => cause)).toContain('strength feigned by oil or salts')
})

test('a look that found all fine takes back what was seen before it, but no danger', async () => {
  const found = await diagnosed([seen(5, 'foam', 'rotten-egg smell', 'slime'), seen(2)])
  expect(found.symptoms.signs).toEqual(['rotten-egg smell', 'slime'])
  expect(found.symptoms.absent).toContain('foam')
  expect(found.symptoms.absent).not.toContain('rotten-egg smell')
  expect((await diagnosed([seen(5), seen(2, 'foam')])).symptoms.signs).toEqual(['foam'])
})

test('a fresh charge, a cleanout and a standstill are known from the journal', async () => {
  const found = await diagnosed([
    { at: at(20), kind: 'idle', from: at(20), to: at(6) },
    { at: at(5), kind: 'cleanout' },
    charge(4),
    seen(1, 'foam'),
  ])
  expect(found.symptoms.signs).toEqual(['foam', 'stood idle', 'fresh charge', 'just cleaned'])
  const later = await diagnosed([charge(40), seen(1, 'foam')])
  expect(later.symptoms).toMatchObject({ signs: ['foam'], absent: ['fresh charge'] })
})

test('a sump that the book does not have is not found', async () => {
  const book = await bookWith([])
  await expect(book.ask((parts) => readDiagnosis(parts, { sump: 'nowhere', at: testNow }))).rejects.toMatchObject({
    code: 'not-found',
  })
})

const health = async (entries: Record<string, unknown>[]) => {
  const { due } = await (await bookWith(entries)).today()
  return due.filter(({ kind }) => kind === 'health')
}

test('a complaint stays on the list of the day, before everything and past every cap, until somebody has answered for it', async () => {
  const complaint = seen(6, 'cough or chest tightness')
  const [due] = await health([complaint])
  expect(due).toMatchObject({
    sump: 's1',
    headline: 'See to cough or chest tightness at Mill 1',
    consequence: 0,
    exempt: true,
    dueOn: '2026-02-25',
    page: '/sumps/s1/why',
    finish: null,
  })
  expect(due?.cautions.join(' ')).toContain('A low slide does not clear a fluid.')
  const answer = { at: at(5), kind: 'verdict', entries: [testId(1)], answer: 'followed up', note: 'Extraction mended' }
  expect(await health([complaint, answer])).toEqual([])
  expect(await health([complaint, { ...answer, entries: [testId(9)] }])).toHaveLength(1)
})

test('several signs at one sump are one line; signs without a stop are none', async () => {
  const due = await health([seen(3, 'emulsion split'), seen(2, 'skin irritation', 'foam'), seen(1, 'foam')])
  expect(due.map(({ headline }) => headline)).toEqual(['See to emulsion split and skin irritation at Mill 1'])
  expect(await health([seen(1, 'foam', 'oil film')])).toEqual([])
})

test('a good reading does not take a complaint off the list', async () => {
  expect(await health([seen(3, 'skin irritation'), reading(1, { bacteria: { below: 1000 }, ph: 9 })])).toHaveLength(1)
})
