import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type DialCheck, dialCurve, dialDrift, dialFor, strengthAtDial } from './dial.ts'

const checks = (pairs: [number, number][]): DialCheck[] => pairs.map(([dial, percent]) => ({ dial, percent }))
const mixer = dialCurve(
  checks([
    [1, 3],
    [2, 6],
    [4, 8],
  ]),
)

test('between two checked settings the strength is on a straight line', () => {
  expect(strengthAtDial(mixer, 2)).toEqual({ outcome: 'strength', percent: 6 })
  expect(strengthAtDial(mixer, 3)).toEqual({ outcome: 'strength', percent: 7 })
  expect(strengthAtDial(mixer, 1)).toEqual({ outcome: 'strength', percent: 3 })
  expect(strengthAtDial(mixer, 4)).toEqual({ outcome: 'strength', percent: 8 })
})

test('beyond the checked settings nothing is known', () => {
  expect(strengthAtDial(mixer, 4.1)).toEqual({ outcome: 'outside', found: 4.1, low: 1, high: 4 })
  expect(strengthAtDial(mixer, 0.9)).toMatchObject({ outcome: 'outside' })
})

test('the setting for a target is where the mixer pours it', () => {
  expect(dialFor(mixer, 7)).toEqual({ outcome: 'setting', dial: 3 })
  expect(dialFor(mixer, 3)).toEqual({ outcome: 'setting', dial: 1 })
  expect(dialFor(mixer, 8)).toEqual({ outcome: 'setting', dial: 4 })
})

test('a target the mixer does not reach has no setting', () => {
  expect(dialFor(mixer, 8.1)).toEqual({ outcome: 'unreachable', low: 3, high: 8 })
  expect(dialFor(mixer, 2.9)).toMatchObject({ outcome: 'unreachable' })
})

test('a dial that weakens as it is turned up is read the other way round', () => {
  const falling = dialCurve(
    checks([
      [1, 9],
      [2, 6],
      [3, 5],
    ]),
  )
  expect(falling.direction).toBe('falling')
  expect(dialFor(falling, 7.5)).toEqual({ outcome: 'setting', dial: 1.5 })
  expect(dialFor(falling, 10)).toEqual({ outcome: 'unreachable', low: 5, high: 9 })
})

test('checks that turn back are pooled, and the middle of a flat stretch is taken', () => {
  const curve = dialCurve(
    checks([
      [1, 3],
      [2, 6],
      [3, 5],
      [4, 8],
    ]),
  )
  expect(curve.points).toEqual([
    [1, 3],
    [2, 5.5],
    [3, 5.5],
    [4, 8],
  ])
  expect(dialFor(curve, 5.5)).toEqual({ outcome: 'setting', dial: 2.5 })
  // squares 0.25 + 0.25, four checks less three levels
  expect(curve.scatterSd).toBeCloseTo(Math.sqrt(0.5), 12)
})

test('repeats at a setting are averaged and tell the scatter', () => {
  const curve = dialCurve(
    checks([
      [2, 6.2],
      [1, 3],
      [2, 5.8],
    ]),
  )
  expect(curve.points).toEqual([
    [1, 3],
    [2, 6],
  ])
  // 0.04 + 0.04, three checks less two levels
  expect(curve.scatterSd).toBeCloseTo(Math.sqrt(0.08), 12)
  expect(mixer.scatterSd).toBeNull()
})

test('the drift is what a new check shows more than the curve', () => {
  expect(dialDrift(mixer, { dial: 3, percent: 7.7 })).toMatchObject({
    outcome: 'drift',
    expected: 7,
    drift: expect.closeTo(0.7, 12),
    relative: expect.closeTo(0.1, 12),
    beyondScatter: null,
  })
  expect(dialDrift(mixer, { dial: 9, percent: 7 })).toMatchObject({ outcome: 'outside' })
})

test('a drift within twice the scatter may be none', () => {
  // scatter √0.08 = 0.283
  const curve = dialCurve(
    checks([
      [1, 3],
      [2, 6.2],
      [2, 5.8],
    ]),
  )
  expect(dialDrift(curve, { dial: 2, percent: 6.5 })).toMatchObject({ beyondScatter: false })
  expect(dialDrift(curve, { dial: 2, percent: 5.4 })).toMatchObject({ beyondScatter: true })
})

test('where nothing was expected a drift has no share', () => {
  const shut = dialCurve(
    checks([
      [0, 0],
      [1, 3],
    ]),
  )
  expect(dialDrift(shut, { dial: 0, percent: 1 })).toMatchObject({ drift: 1, relative: null })
})

test.each<[string, () => unknown]>([
  ['checks is 1, expected checks at 2 different settings', () => dialCurve(checks([[1, 3]]))],
  ['checks.0.percent is 101', () => dialCurve(checks([[1, 101]]))],
  ['checks.0.dial is NaN', () => dialCurve(checks([[Number.NaN, 1]]))],
  ['target is 101', () => dialFor(mixer, 101)],
  ['dial is NaN', () => strengthAtDial(mixer, Number.NaN)],
  ['percent is -1', () => dialDrift(mixer, { dial: 1, percent: -1 })],
])('%s is refused', (message, does) => {
  expect(does).toThrow(message)
})

test('whenever there is a setting, the mixer pours the target there', () => {
  const check = fc.record({
    dial: fc.integer({ min: 0, max: 10 }),
    percent: fc.double({ min: 0, max: 20, noNaN: true }),
  })
  fc.assert(
    fc.property(fc.array(check, { minLength: 2 }), fc.double({ min: 0, max: 20, noNaN: true }), (checks, target) => {
      fc.pre(new Set(checks.map(({ dial }) => dial)).size > 1)
      const curve = dialCurve(checks)
      const setting = dialFor(curve, target)
      if (setting.outcome !== 'setting') return
      const poured = strengthAtDial(curve, setting.dial)
      expect(poured).toMatchObject({ outcome: 'strength', percent: expect.closeTo(target, 9) })
    }),
  )
})
