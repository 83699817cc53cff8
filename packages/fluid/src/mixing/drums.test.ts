import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type DrumQuestion, drumBatches, volumeFromConcentrate } from './drums.ts'

const batch: DrumQuestion = { volume: 500, strength: 6, container: 200, drum: 205, open: 20 }

test('the volume goes into equal fillings, none above what the container holds', () => {
  expect(drumBatches(batch)).toMatchObject({
    fillings: 3,
    each: { volume: 500 / 3, concentrate: 10, water: expect.closeTo(500 / 3 - 10, 10) },
    concentrate: 30,
    water: 470,
  })
  expect(drumBatches({ ...batch, volume: 400 }).fillings).toBe(2)
  expect(drumBatches({ ...batch, volume: 400.1 }).fillings).toBe(3)
})

test('the open drum is used up before another is opened', () => {
  expect(drumBatches(batch).drums).toEqual({ fromOpen: 20, opened: 1, left: 195 })
  expect(drumBatches({ ...batch, open: 30 }).drums).toEqual({ fromOpen: 30, opened: 0, left: 0 })
  expect(drumBatches({ ...batch, open: 50 }).drums).toEqual({ fromOpen: 30, opened: 0, left: 20 })
})

test('a large batch takes several drums', () => {
  // 10000 L at 5 %: 500 L; three drums of 205
  expect(drumBatches({ ...batch, volume: 10_000, strength: 5, open: 0 }).drums).toEqual({
    fromOpen: 0,
    opened: 3,
    left: 115,
  })
})

test('nothing to make takes nothing', () => {
  expect(drumBatches({ ...batch, volume: 0 })).toEqual({
    fillings: 0,
    each: { volume: 0, concentrate: 0, water: 0 },
    concentrate: 0,
    water: 0,
    drums: { fromOpen: 0, opened: 0, left: 20 },
  })
})

test('a drum makes so much premix', () => {
  expect(volumeFromConcentrate({ concentrate: 205, strength: 5 })).toBe(4100)
})

test.each<[string, Partial<DrumQuestion>]>([
  ['volume is -1', { volume: -1 }],
  ['strength is 101', { strength: 101 }],
  ['container is 0', { container: 0 }],
  ['drum is NaN', { drum: Number.NaN }],
  ['open is 206, expected at least 0 and at most 205', { open: 206 }],
])('%s is refused', (message, change) => {
  expect(() => drumBatches({ ...batch, ...change })).toThrow(message)
})

test('a strength of 0 uses no concentrate up', () => {
  expect(() => volumeFromConcentrate({ concentrate: 1, strength: 0 })).toThrow('strength is 0, expected above 0')
})

test('concentrate and water are neither made nor lost', () => {
  const any = fc.record({
    volume: fc.double({ min: 0.01, max: 1e5, noNaN: true }),
    strength: fc.double({ min: 0, max: 100, noNaN: true }),
    container: fc.double({ min: 1, max: 1000, noNaN: true }),
    drum: fc.constant(205),
    open: fc.double({ min: 0, max: 205, noNaN: true }),
  })
  fc.assert(
    fc.property(any, (any) => {
      const { fillings, each, concentrate, water, drums } = drumBatches(any)
      expect(concentrate + water).toBeCloseTo(any.volume, 7)
      expect(fillings * each.concentrate).toBeCloseTo(concentrate, 5)
      expect(each.volume).toBeLessThanOrEqual(any.container * (1 + 1e-8))
      expect(any.open + 205 * drums.opened - drums.left).toBeCloseTo(concentrate, 4)
      expect(drums.left).toBeLessThanOrEqual(205)
    }),
  )
})
