import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'
import { readDoses } from './read-dose.ts'

/** Of a label: 1 to 2 mL in a litre, seven days apart. */
const biocide = {
  id: 'b3',
  name: 'Biocide 3',
  kind: 'biocide',
  dose: { low: 0.1, high: 0.2, unit: '%' },
  minimumDays: 7,
  label: 'label of 2025, table 2',
}

async function shopWith(additives: unknown[], entries: unknown[], more: Record<string, unknown> = {}) {
  const store = await emptyStore()
  const shop = { ...smallShop().shop, additives }
  await importBookFile(store, JSON.stringify(smallShop({ shop, entries, ...more })), testNow)
  return openBook(store, () => testNow)
}
const dosesOf = async (book: Awaited<ReturnType<typeof shopWith>>, more: { additive?: string; cause?: string } = {}) =>
  book.ask((parts, now) => readDoses(parts, { at: now, sump: 's1', ...more }))
const charge = { id: testId(90), at: '2026-02-01T08:00:00Z', kind: 'charge', sump: 's1', volume: 200, strength: 8 }
const given = (n: number, at: string, additive: Record<string, unknown>) => ({
  ...{ id: testId(n), at, kind: 'addition', sump: 's1' },
  additive: { id: 'b3', name: 'Biocide 3', ...additive },
})

const justPh = (n: number, ph: number, at: string) => testReading(n, { ph, at, brix: undefined, volume: undefined })

test('a dose is made for the low end of the volume, within the label', async () => {
  const book = await shopWith([biocide], [charge, testReading(1, { volume: 190 })])
  const { volume, doses } = await dosesOf(book)
  const { answer, words, unit } = doses[0]!
  // 0.1 % is 1 mL in a litre, 0.2 % are 2.
  expect(answer).toMatchObject({
    outcome: 'dose',
    least: expect.closeTo(1 * volume!.low90, 9),
    most: expect.closeTo(2 * volume!.low90, 9),
  })
  expect(unit).toBe('mL')
  expect(volume!.low90).toBeLessThan(volume!.mean)
  expect(words.why).toContain('label of 2025, table 2')
})

test('what went in since the charge counts by id and by name, what a void took away or an older charge had does not', async () => {
  const entries = [
    given(2, '2026-01-30T08:00:00Z', { litres: 0.3 }),
    charge,
    testReading(1, { volume: 190 }),
    given(3, '2026-03-01T08:00:00Z', { litres: 0.3 }),
    { id: testId(4), at: '2026-03-01T09:00:00Z', kind: 'void', entry: testId(3) },
  ]
  expect((await dosesOf(await shopWith([biocide], entries))).doses[0]!.answer.outcome).toBe('dose')
  const again = { ...given(5, '2026-03-01T10:00:00Z', { litres: 0.3 }), additive: { name: 'biocide 3', litres: 0.3 } }
  const { doses } = await dosesOf(await shopWith([biocide], [...entries, again]))
  // Two days ago, at ten: five of the seven days are left.
  expect(doses[0]!.answer).toEqual({ outcome: 'too-soon', inDays: expect.closeTo(5, 9) })
  expect(doses[0]!.given).toMatchObject([{ entry: testId(5), amount: 300 }])
})

test('an additive whose label nobody typed gets no dose', async () => {
  const book = await shopWith([{ id: 'x', name: 'Defoamer', kind: 'defoamer' }], [charge, testReading(1)])
  const { answer, words } = (await dosesOf(book)).doses[0]!
  expect(answer).toEqual({ outcome: 'label-missing', missing: 'dose' })
  expect(words.headline).toBe('No dose: the label is not in the book')
})

test('on a falling pH there is no dose until somebody says why', async () => {
  const entries = [
    charge,
    justPh(1, 9.3, '2026-02-02T08:00:00Z'),
    justPh(2, 8.7, '2026-03-02T08:00:00Z'),
    testReading(5, { volume: 185 }),
  ]
  const book = await shopWith([biocide], entries)
  const found = await dosesOf(book)
  expect(found.isFallUnexplained).toBe(true)
  expect(found.doses[0]!.answer.outcome).toBe('cause-first')
  expect(found.doses[0]!.words.cautions.join(' ')).toContain('No dose before the cause is known')
  expect((await dosesOf(book, { cause: 'weak after a leak' })).doses[0]!.answer.outcome).toBe('dose')
})

test('a fall of half a unit is none yet', async () => {
  const entries = [charge, justPh(1, 9.2, '2026-02-02T08:00:00Z'), justPh(2, 8.7, '2026-03-02T08:00:00Z')]
  expect((await dosesOf(await shopWith([biocide], entries))).isFallUnexplained).toBe(false)
})

test('nothing with nitrite goes into a fluid that has amines, or of which that is not known', async () => {
  const nitrite = { ...biocide, kind: 'corrosion', contains: ['nitrite'] }
  const of = async (contains: string[] | undefined) => {
    const fluids = [{ ...smallShop().fluids[0], ...(contains === undefined ? {} : { contains }) }]
    const book = await shopWith([nitrite], [charge, testReading(1)], { fluids })
    return (await dosesOf(book)).doses[0]!.answer.outcome
  }
  expect(await of(undefined)).toBe('nitrite-with-amines')
  expect(await of(['amines'])).toBe('nitrite-with-amines')
  expect(await of([])).toBe('dose')
})

test('a dose beyond its label is kept as a fact, and named until somebody has seen to it', async () => {
  const book = await shopWith([biocide], [charge, testReading(1, { volume: 190 })])
  const over = given(7, '2026-03-03T09:00:00Z', { litres: 0.9 })
  expect(await book.put(over)).toMatchObject({ status: 'added' })
  // 900 mL in 200 L are 4.5 mL in a litre.
  const { due } = await book.today()
  expect(due).toMatchObject([{ key: `dose:${testId(7)}`, kind: 'dose', sump: 's1' }])
  expect(due[0]!.why).toContain('4.5 mL in each litre, where its label allows 2 mL')
  expect((await dosesOf(book)).doses[0]!.contradictions).toMatchObject([{ entry: testId(7) }])
  await book.put({ id: testId(8), at: '2026-03-03T09:30:00Z', sump: 's1', ...due[0]!.finish })
  expect((await book.today()).due).toEqual([])
})

test('an additive or a sump that the book does not have is not found', async () => {
  const book = await shopWith([biocide], [])
  await expect(dosesOf(book, { additive: 'nothing' })).rejects.toMatchObject({ code: 'not-found' })
})
