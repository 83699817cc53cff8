import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type TracerStep, tracerVolume } from './tracer-volume.ts'

test('the volume is the fluid before the addition', () => {
  // 470 L at 4 % and 10 L neat: 28.8 L of concentrate in 480 L, 6 %
  expect(tracerVolume({ before: 4, after: 6, added: 10 })).toMatchObject({ volume: 470 })
})

test('water can be the tracer as well', () => {
  // 350 L at 8 % and 50 L of water: 28 L in 400 L, 7 %
  expect(tracerVolume({ before: 8, after: 7, added: 50, strength: 0 })).toMatchObject({ volume: 350 })
})

test('without doubt in the readings the interval is a point', () => {
  expect(tracerVolume({ before: 4, after: 6, added: 10 })).toEqual({
    outcome: 'volume',
    volume: 470,
    low90: 470,
    high90: 470,
  })
})

test('the interval reaches further up than down', () => {
  const found = tracerVolume({ before: 6, after: 7, added: 4, sd: 0.1 })
  if (found.outcome !== 'volume') throw new Error(found.outcome)
  expect(found.high90 - found.volume).toBeGreaterThan(found.volume - found.low90)
})

test('at both ends of the interval the readings just contradict the volume at 90 percent', () => {
  const [before, after, added, sd] = [6, 7, 4, 0.1]
  const found = tracerVolume({ before, after, added, sd })
  if (found.outcome !== 'volume') throw new Error(found.outcome)
  for (const volume of [found.low90, found.high90]) {
    const missing = volume * (before - after) + added * (100 - after)
    const doubt = sd * Math.hypot(volume, volume + added)
    expect(Math.abs(missing) / doubt).toBeCloseTo(1.6448536, 6)
  }
})

test('a step as small as its doubt says nothing', () => {
  // √2 × 1.6449 × 0.1 = 0.23262
  expect(tracerVolume({ before: 6, after: 6.23, added: 4, sd: 0.1 })).toEqual({
    outcome: 'too-small',
    step: expect.closeTo(0.23, 10),
    smallestStep: expect.closeTo(0.23262, 5),
  })
  expect(tracerVolume({ before: 6, after: 6.24, added: 4, sd: 0.1 })).toMatchObject({ outcome: 'volume' })
  expect(tracerVolume({ before: 6, after: 6, added: 4 })).toMatchObject({ outcome: 'too-small' })
})

test.each<[string, TracerStep]>([
  ['weaker after concentrate', { before: 6, after: 5, added: 4 }],
  ['stronger after water', { before: 6, after: 7, added: 40, strength: 0 }],
  ['beyond the strength of what was added', { before: 6, after: 12, added: 40, strength: 10 }],
  ['at the strength of what was added', { before: 6, after: 10, added: 40, strength: 10 }],
])('%s is a contradiction, not a volume', (_, step) => {
  expect(tracerVolume(step)).toEqual({ outcome: 'wrong-way' })
})

test.each<[string, Partial<TracerStep>]>([
  ['before is -1', { before: -1 }],
  ['after is NaN', { after: Number.NaN }],
  ['added is 0, expected above 0', { added: 0 }],
  ['strength is 101', { strength: 101 }],
  ['sd is -1', { sd: -1 }],
])('%s is refused', (message, change) => {
  expect(() => tracerVolume({ before: 4, after: 6, added: 10, ...change })).toThrow(message)
})

test('a mix that is really made gives its volume back', () => {
  const litres = fc.double({ min: 1, max: 10_000, noNaN: true })
  fc.assert(
    fc.property(litres, litres, fc.double({ min: 0, max: 15, noNaN: true }), (volume, added, before) => {
      const after = (volume * before + added * 100) / (volume + added)
      const found = tracerVolume({ before, after, added })
      expect(found).toMatchObject({ volume: expect.toSatisfy((v: number) => Math.abs(v / volume - 1) < 1e-8) })
    }),
  )
})

test('the volume always lies in its interval, and more doubt widens it', () => {
  const percent = fc.double({ min: 0, max: 20, noNaN: true })
  fc.assert(
    fc.property(percent, percent, fc.double({ min: 0, max: 0.5, noNaN: true }), (before, after, sd) => {
      const narrow = tracerVolume({ before, after, added: 10, sd: sd / 2 })
      const wide = tracerVolume({ before, after, added: 10, sd })
      if (wide.outcome !== 'volume' || narrow.outcome !== 'volume') return
      expect(wide.low90).toBeLessThanOrEqual(narrow.low90 + 1e-9)
      expect(narrow.low90).toBeLessThanOrEqual(narrow.volume)
      expect(narrow.volume).toBeLessThanOrEqual(narrow.high90)
      expect(narrow.high90).toBeLessThanOrEqual(wide.high90 * (1 + 1e-9))
    }),
  )
})
