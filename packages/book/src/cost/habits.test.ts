import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow } from '../testing.ts'
import { readHabits } from './habits.ts'
import { readLives } from './life-of-sumps.ts'

const fluid = (more: Record<string, unknown> = {}) => ({
  ...smallShop().fluids[0],
  pricePerLitre: 5,
  limits: { concentration: { low: 6, target: 8, high: 10 }, bacteria: { high: 1_000_000 } },
  ...more,
})
let next = 0
const dayMs = 86_400_000
/** So many days before the tests' now. */
const written = (kind: string, daysAgo: number, more: Record<string, unknown>) => {
  next += 1
  const at = new Date(testNow.getTime() - daysAgo * dayMs).toISOString()
  return { id: testId(next), at, kind, sump: 's1', ...more }
}

async function bookOf(entries: unknown[], more: Record<string, unknown> = {}) {
  const store = await emptyStore()
  await importBookFile(store, JSON.stringify(smallShop({ fluids: [fluid()], entries, ...more })), testNow)
  return openBook(store, () => testNow)
}

/** Twice a week 20 L are missing and filled up at a strength; the strength that is read stays where it is. */
const weeks = (count: number, { brix, strength }: { brix: number; strength: number }) =>
  Array.from({ length: 2 * count }, (_, i) => {
    const ago = 3.5 * (2 * count - 1 - i) + 0.5
    return [
      written('reading', ago, { brix, volume: 180 }),
      written('addition', ago - 0.01, { volume: 20, strength, water: 'tap' }),
    ]
  }).flat()

const habitsOf = async (entries: unknown[], more: Record<string, unknown> = {}) => {
  const book = await bookOf(entries, more)
  return book.ask((parts, at) => readHabits(parts, { from: '2026-02-01', to: '2026-02-28', at }))
}

// 1.6 % per °Brix and a target of 8 %: 6.25 °Brix are 10 %, 5 °Brix are 8 %.
test('a sump kept above its target cost concentrate, with an interval about it', async () => {
  const { rich, sumps, days } = await habitsOf(weeks(12, { brix: 6, strength: 3 }))
  expect(days).toBe(28)
  const [habit] = sumps
  // 9.6 %, read with no doubt but the scale's: 1.6 % of what was carried off, whatever the estimate says that is.
  expect(rich.litres.mean).toBeCloseTo(0.016 * habit!.losses.carryOff.mean, 6)
  expect(rich.litres.low).toBeLessThan(rich.litres.mean)
  expect(rich.litres.high).toBeGreaterThan(rich.litres.mean)
  expect(rich.cents!.mean).toBe(Math.round(500 * rich.litres.mean))
  expect(habit!.sentences[0]).toContain('went for running above target')
  expect(habit!.pouredStrength).toBeCloseTo(3, 9)
})

test('at its target it cost nothing for that', async () => {
  const { rich, lean, sumps } = await habitsOf(weeks(12, { brix: 5, strength: 3 }))
  expect(rich.litres.mean).toBe(0)
  expect(lean).toEqual({ days: 0, cents: null })
  // 8 pours of 20 L at 3 %, and 8 % of what was carried off.
  const { saving, losses } = sumps[0]!
  expect(saving!.poured).toBeCloseTo(4.8, 9)
  expect(saving!.need.mean).toBeCloseTo(0.08 * losses.carryOff.mean, 6)
  expect(saving!.need.low).toBeLessThan(saving!.need.high)
  expect(saving!.saved.low).toBeCloseTo(saving!.poured - saving!.need.high, 9)
})

test('days under the band are a risk, and money only by the shop’s own figure', async () => {
  const lean = weeks(12, { brix: 3, strength: 2 })
  expect((await habitsOf(lean)).lean).toEqual({ days: 28, cents: null })
  const shop = { ...smallShop().shop, costs: { leanPerDay: 4 } }
  expect((await habitsOf(lean, { shop })).lean).toEqual({ days: 28, cents: 11_200 })
})

test('without a price there is no money, and a pour without a strength leaves the saving unsaid', async () => {
  const { pricePerLitre: _, ...unpriced } = fluid()
  const entries = [...weeks(12, { brix: 6, strength: 3 }), written('addition', 9, { volume: 10 })]
  const { rich, sumps } = await habitsOf(entries, { fluids: [unpriced] })
  expect(rich.cents).toBe(null)
  expect(sumps[0]!.saving).toBe(null)
})

const livesOf = async (entries: unknown[]) =>
  (await (await bookOf(entries)).ask((parts, at) => readLives(parts, { at }))).sumps[0]!

/** Filled 200 days ago; every week it takes more concentrate than the week before. */
const growing = () => [
  written('charge', 200, { volume: 200, strength: 8, water: 'tap' }),
  ...Array.from({ length: 28 }, (_, week) =>
    written('addition', 199 - 7 * week, { concentrate: 1 + 0.14 * week, water: 'tap' }),
  ),
]

test('a charge that becomes dearer to keep has an age by money alone, with an interval', async () => {
  const found = await livesOf(growing())
  expect(found).toMatchObject({
    age: 200,
    condition: null,
    growth: { outcome: 'grows' },
    changeCost: { assumed: true },
  })
  // 0.14 L a week more each week: 0.14 × 5 / 7 / 7 = 1/70 a day and day. A full charge is 200 × 8 % × 5 = 80: √(2 × 80 × 70) = 106 days.
  expect(found.life!.days).toBeGreaterThan(95)
  expect(found.life!.days).toBeLessThan(117)
  expect(found.life!.low).toBeLessThanOrEqual(found.life!.days)
  expect(found.life!.high).toBeGreaterThanOrEqual(found.life!.days)
  expect(found.sentence).toContain('no interval of guidance or law becomes longer')
})

test.each(['emulsion split', 'rancid smell', 'skin irritation'])(
  '%s: it goes now, and no age is named',
  async (sign) => {
    const found = await livesOf([...growing(), written('observation', 3, { signs: ['foam', sign] })])
    expect(found).toMatchObject({ life: null, condition: expect.stringContaining('was seen on 28 Feb 2026') })
    expect(found.sentence).toContain('it goes now, whatever its age and whatever the money')
    expect(found.sentence).not.toMatch(/pays after|is due/)
  },
)

test('a slide at the limit decides as well; one that a charge came after, or a better one, does not', async () => {
  const slide = (ago: number, bacteria: unknown) => written('reading', ago, { bacteria })
  expect((await livesOf([...growing(), slide(3, { atLeast: 1e6 })])).condition).toContain('The last slide')
  expect((await livesOf([...growing(), slide(5, 1e7), slide(3, 1e3)])).condition).toBe(null)
  const changed = [...growing(), slide(5, 1e7), written('charge', 2, { volume: 190, strength: 8, water: 'tap' })]
  expect(await livesOf(changed)).toMatchObject({ condition: null, age: 2, growth: { outcome: 'too-few' } })
})

test('even costs name no age', async () => {
  const even = [
    written('charge', 200, { volume: 200, strength: 8 }),
    ...Array.from({ length: 28 }, (_, week) => written('addition', 199 - 7 * week, { concentrate: 1 })),
  ]
  expect(await livesOf(even)).toMatchObject({ life: null, growth: { outcome: 'flat' } })
})
