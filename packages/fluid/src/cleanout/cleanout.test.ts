import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type CleanoutAsked, cleanoutQuantities } from './cleanout.ts'

const asked: CleanoutAsked = {
  volume: 100,
  heldBack: 10,
  cleanerPercent: 3,
  rinsePercent: 2,
  rinseFraction: 0.4,
  rinses: 1,
  target: 6,
}

test('cleaner, each rinse and the fresh charge are fillings in this order, drained down to the same heel', () => {
  const found = cleanoutQuantities({ ...asked, rinses: 2 })
  expect(found).toMatchObject({ outcome: 'quantities', drained: [90, 90, 40, 40], waste: 260 })
  expect(found.outcome === 'quantities' && found.fills.map(({ stage }) => stage)).toEqual([
    'cleaner',
    'rinse',
    'rinse',
    'charge',
  ])
})

test('strengths are those of what is poured', () => {
  const found = cleanoutQuantities(asked)
  // 90 L at 3 %: 2.7 L; 40 L at 2 %: 0.8 L
  expect(found).toMatchObject({
    fills: [
      { pour: { volume: 90, strength: 3, concentrate: expect.closeTo(2.7, 12), water: expect.closeTo(87.3, 12) } },
      { pour: { volume: 40, strength: 2, concentrate: 0.8, water: 39.2 } },
      { pour: { volume: 90 } },
    ],
  })
})

test('no rinse is filled above the mark', () => {
  expect(cleanoutQuantities({ ...asked, rinseFraction: 0.9 })).toMatchObject({ drained: [90, 90, 90] })
  expect(cleanoutQuantities({ ...asked, rinseFraction: 1 })).toMatchObject({ drained: [90, 90, 90] })
  expect(cleanoutQuantities({ ...asked, rinseFraction: 0.89 })).toMatchObject({ drained: [90, 90, 89] })
})

test('a sump that drains dry keeps nothing of the old fluid', () => {
  expect(cleanoutQuantities({ ...asked, heldBack: 0 })).toMatchObject({
    afterRinses: { oldFluid: 0, cleaner: 0, fluid: 2 },
    charge: { strength: 6 },
  })
  expect(cleanoutQuantities({ ...asked, heldBack: 0, rinseFraction: 0 })).toMatchObject({
    afterRinses: { oldFluid: 0, cleaner: 0, fluid: 0 },
  })
})

test('a target that the strongest mix cannot make with the heel is said with what can be made', () => {
  // Heel 10 L at 0: 90 L at 6 % make 5.4 %
  const weak = { ...asked, rinses: 0, strongest: 6 }
  expect(cleanoutQuantities(weak)).toEqual({ outcome: 'unreachable', low: 0, high: expect.closeTo(5.4, 12) })
  expect(cleanoutQuantities({ ...weak, target: 5.4 })).toMatchObject({ outcome: 'quantities' })
  // A heel of 50 L at up to 20 % from a rinse stays above 1 %
  const strong = { ...asked, heldBack: 50, rinsePercent: 20, rinseFraction: 0.5, target: 1 }
  expect(cleanoutQuantities(strong)).toMatchObject({ outcome: 'unreachable', low: 5 })
})

test.each([
  ['volume is 0', { volume: 0 }],
  ['heldBack is 100, expected less than the volume', { heldBack: 100 }],
  ['heldBack is -1', { heldBack: -1 }],
  ['cleanerPercent is 101', { cleanerPercent: 101 }],
  ['rinsePercent is NaN', { rinsePercent: Number.NaN }],
  ['rinseFraction is 1.1', { rinseFraction: 1.1 }],
  ['rinses is 0.5, expected a whole number', { rinses: 0.5 }],
  ['target is -1', { target: -1 }],
  ['strongest is 0', { strongest: 0 }],
])('%s is refused', (message, change) => {
  expect(() => cleanoutQuantities({ ...asked, ...change })).toThrow(message)
})

test('whatever is asked, what is poured is drained or still there, and the charge meets its target', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 5000, noNaN: true }),
      fc.double({ min: 0, max: 0.5, noNaN: true }),
      share,
      fc.integer({ min: 0, max: 6 }),
      (volume, heel, rinseFraction, rinses) => {
        const found = cleanoutQuantities({ ...asked, volume, heldBack: heel * volume, rinseFraction, rinses })
        if (found.outcome !== 'quantities') return
        const cleaner = found.fills[0]!.pour.concentrate
        const out = found.fills
          .slice(0, -1)
          .reduce((sum, { contents }, i) => sum + (found.drained[i + 1]! * contents.cleaner) / 100, 0)
        const left = (heel * volume * found.afterRinses.cleaner) / 100
        expect(out + left).toBeCloseTo(cleaner, 8)
        expect(found.fills.at(-1)!.contents.fluid).toBeCloseTo(6, 9)
      },
    ),
  )
})
