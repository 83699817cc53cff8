import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { BookError } from '../errors.ts'
import { emptyStore, smallShop, testId } from '../testing.ts'
import { estimateFile } from './file-estimate.ts'

type Written = Record<string, unknown>

const days = (n: number) => new Date(Date.parse('2026-01-05T07:00:00Z') + n * 86_400_000).toISOString()
const written = (entries: readonly Written[]): Written[] =>
  entries.map((entry, n) => ({ id: testId(n + 1), sump: 's1', ...entry }))
const text = (entries: readonly Written[], more: Written = {}) =>
  JSON.stringify(smallShop({ ...more, entries: written(entries) }))

/** A charge and a reading of level and strength twice a week, drifting a little, filled up by measure every second time. */
const orderly = (weeks: number): Written[] => [
  { kind: 'charge', at: days(0), volume: 200, strength: 8, water: 'tap' },
  ...Array.from({ length: 2 * weeks }, (_, i) => [
    { kind: 'reading', at: days(3.5 * (i + 1)), brix: 5.2, volume: 185, pumps: 'stopped' },
    { kind: 'addition', at: days(3.5 * (i + 1) + 0.1), volume: 15, strength: 6, water: 'tap' },
  ]).flat(),
]

const answerOf = async (entries: readonly Written[], at: string, more: Written = {}) =>
  (await estimateFile(text(entries, more), { at, ahead: [14, 7] })).sumps.s1!

function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}/${key}`))
}
const allFinite = (value: unknown) =>
  numbersIn(value).every(([, number]) => Number.isFinite(number)) && !/NaN|Infinity/.test(JSON.stringify(value))

test('an orderly sump stands where it was read, and rises and falls from there when nothing is added', async () => {
  const { now, ahead, recipe, doubts } = await answerOf(orderly(8), days(57))
  // 5.2 °Brix at 1.6 % per °Brix is 8.3 %; the level was last filled to about 200 L.
  expect(now.concentration.low90).toBeLessThan(8.3)
  expect(now.concentration.high90).toBeGreaterThan(7.5)
  expect(doubts).toEqual([])
  expect(recipe.action).not.toBe('measure-first')
  expect(ahead.map(({ days: ahead }) => ahead)).toEqual([14, 7])
  expect(ahead[0]!.volume.mean).toBeLessThan(ahead[1]!.volume.mean)
  expect(ahead[1]!.volume.mean).toBeLessThan(now.volume.mean)
})

test('while a doubt is open there is no recipe, and a void that settles it brings it back', async () => {
  const slip = { kind: 'reading', at: days(60), brix: 52, pumps: 'stopped' }
  const doubted = await answerOf([...orderly(8), slip], days(60.5))
  expect(doubted.doubts).toMatchObject([{ open: true, entry: testId(34), entries: [testId(34)], at: days(60) }])
  expect(doubted.doubts[0]!.text).toMatch(/^Read 52\.0 °Brix where .* was expected: .*Read it again first/)
  expect(doubted.recipe).toMatchObject({ action: 'measure-first', reasons: ['doubt'], add: null, result: null })
  const settled = await answerOf([...orderly(8), slip, { kind: 'void', entry: testId(34), at: days(200) }], days(60.5))
  expect(settled.doubts).toEqual([])
  expect(settled.recipe.action).not.toBe('measure-first')
})

test('a straight oil is refused water, without crossing and without NaN', async () => {
  const fluids = [{ id: 'f1', name: 'Oil', class: 'straight-oil' }]
  const entries = [
    { kind: 'charge', at: days(0), volume: 200 },
    { kind: 'reading', at: days(9), volume: 150 },
  ]
  const answer = await answerOf(entries, days(10), { fluids })
  expect(answer.recipe).toMatchObject({ action: 'refuse', reasons: ['straight-oil'] })
  expect(answer.crossing).toBeNull()
  expect(allFinite(answer)).toBe(true)
})

test.each<[string, Written[], Written?]>([
  ['no entry at all', []],
  [
    'nothing known of the sump',
    [{ kind: 'reading', at: days(1), brix: 5 }],
    { sumps: [{ id: 's1', name: 'A', fluid: 'f1' }] },
  ],
  [
    'a draw-off larger than the volume',
    [
      { kind: 'charge', at: days(0), volume: 200, strength: 8 },
      { kind: 'drawoff', at: days(1), volume: 5000 },
    ],
  ],
  [
    'two charges at once',
    [
      { kind: 'charge', at: days(0), volume: 200, strength: 8 },
      { kind: 'charge', at: days(0), volume: 150, strength: 3 },
    ],
  ],
  [
    'entries before the charge',
    [
      { kind: 'addition', at: days(-9), volume: 20, strength: 5 },
      { kind: 'charge', at: days(0), volume: 200, strength: 8 },
    ],
  ],
  [
    'clocks years off',
    [
      { kind: 'reading', at: '1970-01-01T00:00:00Z', brix: 5 },
      { kind: 'charge', at: days(0), volume: 200, strength: 8 },
      { kind: 'reading', at: '2099-01-01T00:00:00Z', brix: 5 },
    ],
  ],
  ['water alone', [{ kind: 'charge', at: days(0), volume: 200, strength: 0 }]],
  ['a charge of nothing', [{ kind: 'charge', at: days(0), volume: 0, strength: 100, heldBack: 0 }]],
  [
    'a transfer of more than there is, into itself and back',
    [
      { kind: 'transfer', at: days(1), volume: 900, to: 's1' },
      { kind: 'transfer', at: days(2), volume: 900 },
    ],
  ],
  [
    'a reading that would be more than concentrate',
    [{ kind: 'reading', at: days(1), brix: 95, titration: 100, volume: 0 }],
  ],
  [
    'limits that no pour can keep',
    orderly(2),
    {
      mixers: [{ id: 'm', name: 'Mixer', settings: [[1, 3]] }],
      fluids: [{ id: 'f1', name: 'F', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
    },
  ],
  [
    'a suction level without a mark',
    [{ kind: 'reading', at: days(1), brix: 5 }],
    { sumps: [{ id: 's1', name: 'A', fluid: 'f1', minVolume: 900, capacity: 100 }] },
  ],
])('with %s every figure is finite, however wide', async (_, entries, more) => {
  for (const at of [days(-40), days(10), days(400)]) {
    const answer = await answerOf(entries, at, more)
    expect(allFinite(answer)).toBe(true)
    for (const figure of Object.values(answer.now)) {
      expect(figure.low90).toBeLessThanOrEqual(figure.high90)
      expect(figure.low90).toBeGreaterThanOrEqual(0)
    }
  }
})

test('entries after the time asked for are not used, and the order of the file does not matter', async () => {
  const entries = written([...orderly(6), { kind: 'reading', at: days(50), brix: 2 }])
  const of = (list: readonly Written[]) => estimateFile(JSON.stringify(smallShop({ entries: list })), { at: days(44) })
  const whole = JSON.stringify(await of(entries))
  expect(JSON.stringify(await of(entries.toReversed()))).toBe(whole)
  expect(JSON.stringify(await of(entries.filter(({ at }) => (at as string) <= days(44))))).toBe(whole)
})

test('a book that took the file in entry by entry, late ones too, answers the same to the last bit', async () => {
  const entries = written(orderly(20))
  const store = await emptyStore()
  const book = openBook(store, () => new Date(days(150)))
  const file = JSON.stringify(smallShop({ entries: [] }))
  await book.importFile({
    name: 'shop.json',
    async *open() {
      yield new TextEncoder().encode(file)
    },
  })
  const late = entries.filter((_, i) => i % 7 === 3)
  for (const entry of [...entries.filter((entry) => !late.includes(entry)), ...late.toReversed()]) {
    await book.putMany([entry])
    if (entries.indexOf(entry) % 3 === 0) await book.estimate({ at: days(141) })
  }
  const kept = await book.estimate({ at: days(141), ahead: [7, 14] })
  const fresh = await estimateFile(text(orderly(20)), { at: days(141), ahead: [7, 14] })
  expect(JSON.stringify(kept)).toBe(JSON.stringify(fresh))
})

test('a file with a fault is refused whole, as is a question that cannot be', async () => {
  const refused = async (file: string, question: Parameters<typeof estimateFile>[1]) =>
    estimateFile(file, question).then(
      () => null,
      (error: unknown) =>
        error instanceof BookError ? [error.code, error.faults.map(({ pointer }) => pointer)] : error,
    )
  expect(await refused(text([{ kind: 'reading', at: days(1), brix: 120 }]), { at: days(2) })).toEqual([
    'refused-input',
    ['/entries/0/brix'],
  ])
  expect(await refused(text([]), { at: 'now', ahead: [-1, Number.NaN] })).toEqual([
    'refused-input',
    ['/ahead/0', '/ahead/1', '/at'],
  ])
  expect(await refused(text([]), { at: days(2), sump: 's9' })).toEqual(['not-found', []])
})
