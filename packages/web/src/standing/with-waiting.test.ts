import { advise } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import type { Entry, SumpNow } from '../api/types.ts'
import { someSump } from './testing.ts'
import { todayWithWaiting, withWaiting } from './with-waiting.ts'

const at = '2026-03-03T09:30:00.000Z'
const asked = { reader: { units: 'metric' }, now: Date.parse(at) } as const
const entry = (n: number, fields: object): Entry =>
  ({ id: `id-${n}`, at, sump: 'mill-7', ...fields }) as unknown as Entry
const standing = (sump: SumpNow, ...entries: Entry[]) => withWaiting(sump, entries, asked)
// 150 L at 6 % of 200 L.
const sump: SumpNow = {
  ...someSump,
  concentration: { mean: 6, sd: 0, low90: 6, high90: 6 },
  volume: { mean: 150, sd: 0, low90: 150, high90: 150 },
}

test('nothing that waits, or what is about another sump, changes nothing', () => {
  expect(standing(sump)).toBe(sump)
  expect(standing(sump, entry(1, { kind: 'addition', sump: 'other', volume: 50, strength: 10 }))).toBe(sump)
  expect(standing(sump, entry(1, { kind: 'observation', signs: ['foam'] }))).toBe(sump)
})

// (150 · 6 + 50 · 10) / 200 = 7.
test('a pour that waits counts in where the sump stands, and in the sentence', () => {
  const after = standing(sump, entry(1, { kind: 'addition', volume: 50, strength: 10 }))
  expect(after.concentration!.mean).toBeCloseTo(7, 12)
  expect(after.volume!.mean).toBe(200)
  expect(after.sentence).toContain('7')
  expect(after.ahead.drift).toBe('')
})

// (150 · 6 + 3 · 100) / 153 = 7.843 %.
test('concentrate alone and a fill to the mark count as what they are', () => {
  expect(standing(sump, entry(1, { kind: 'addition', concentrate: 3 })).concentration!.mean).toBeCloseTo(1200 / 153, 12)
  const filled = standing(sump, entry(1, { kind: 'addition', toMark: true, strength: 10 }))
  expect(filled).toMatchObject({ volume: { mean: 200 }, concentration: { mean: 7 } })
})

test('an additive is no coolant', () => {
  expect(standing(sump, entry(1, { kind: 'addition', additive: { name: 'Wetter', litres: 0.2 } }))).toBe(sump)
})

test('what is drawn off is missing, and a pour on top of it is mixed into what is left', () => {
  const after = standing(
    sump,
    entry(1, { kind: 'drawoff', volume: 50 }),
    entry(2, { kind: 'addition', volume: 100, strength: 8 }),
  )
  // (100 · 6 + 100 · 8) / 200 = 7.
  expect(after).toMatchObject({ volume: { mean: 200 }, concentration: { mean: 7 } })
})

// 4 °Brix × 1.6 = 6.4 %; the level on the glass of a mark that nobody learnt otherwise.
test('a reading that waits is where it stands, before the pour that follows it', () => {
  const reading = entry(1, { kind: 'reading', brix: 4, volume: 160 })
  expect(standing(sump, reading).concentration!.mean).toBeCloseTo(6.4, 12)
  const after = standing(sump, reading, entry(2, { kind: 'addition', volume: 40, strength: 10 }))
  // (160 · 6.4 + 40 · 10) / 200 = 7.12.
  expect(after.concentration!.mean).toBeCloseTo(7.12, 12)
})

test('what was withdrawn before it was sent counts nowhere', () => {
  const pour = entry(1, { kind: 'addition', volume: 50, strength: 10 })
  expect(standing(sump, pour, entry(2, { kind: 'void', entry: 'id-1', reason: 'misread' }))).toBe(sump)
})

test('a line of the list has the recipe for where it stands now; one that needs nothing more is in order', () => {
  const advice = advise({ volume: sump.volume, concentration: sump.concentration }, sump.bench, asked.reader)
  const item = { ...sump, ...advice, action: advice.recipe.action, why: '' }
  expect(advice.recipe.action).toBe('top-up')
  const today = { items: [item], calm: [] as SumpNow[] }
  // 25 L at 15 %: (900 + 375) / 175 = 7.286 %, 25 L missing.
  const half = todayWithWaiting(today, [entry(1, { kind: 'addition', volume: 25, strength: 15 })], asked)
  expect(half.items[0]!.recipe.add!.volume).toBeCloseTo(25, 6)
  // 50 L at 14 %: (900 + 700) / 200 = 8 %, full and on target.
  const done = todayWithWaiting(today, [entry(1, { kind: 'addition', volume: 50, strength: 14 })], asked)
  expect(done).toMatchObject({ items: [], calm: [{ sump: 'mill-7' }] })
})
