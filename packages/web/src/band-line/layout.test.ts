import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bandLineLayout, type Label, labelWidth, spread } from './layout.ts'

const view = { width: 340 }

test('sumps of one fluid near their band share one scale', () => {
  const band = { low: 6, high: 10 }
  const one = bandLineLayout({ band, target: 8, now: { mean: 5.6, low90: 5.2, high90: 6 }, after: 8 }, view)
  const other = bandLineLayout({ band, target: 8, now: { mean: 9, low90: 8.6, high90: 9.4 }, after: null }, view)
  expect(one.x(8)).toBe(other.x(8))
  expect(one.x(6)).toBe(other.x(6))
})

test('a sump far out of its band stretches the scale until it is on it', () => {
  const { x } = bandLineLayout(
    { band: { low: 6, high: 10 }, target: 8, now: { mean: 31, low90: 30, high90: 32 }, after: null },
    view,
  )
  expect(x(32)).toBeLessThan(340)
  expect(x(6)).toBeGreaterThan(0)
})

test('a drift has its arrow where it is long enough to be seen, up to the edge and no further', () => {
  const band = { low: 6, high: 10 }
  const now = { mean: 8, low90: 7.6, high90: 8.4 }
  const of = (inAWeek: number | null) => bandLineLayout({ band, target: 8, now, after: null, inAWeek }, view)
  expect(of(null).drift).toBeNull()
  expect(of(8.1).drift).toBeNull()
  const { drift, x } = of(9.5)
  expect(drift).toEqual({ from: x(8), to: x(9.5) })
  expect(of(83).drift!.to).toBe(340 - 12)
  expect(of(83).x(10) - of(83).x(6)).toBeGreaterThan(80)
})

test('the scale never runs below nothing', () => {
  const { x } = bandLineLayout(
    { band: { low: 1, high: 4 }, target: 2, now: { mean: 0.2, low90: 0, high90: 0.5 }, after: null },
    view,
  )
  expect(x(0)).toBe(12)
})

test('nothing known but a reading still has a place', () => {
  const { x, above, below } = bandLineLayout(
    { band: null, target: null, now: { mean: 5, low90: 4.8, high90: 5.2 }, after: null },
    view,
  )
  expect(x(5)).toBeGreaterThan(0)
  expect(x(5)).toBeLessThan(340)
  expect(above.map(({ text }) => text)).toEqual(['5.0'])
  expect(below).toEqual([])
})

test('a target at the end of its band is written once', () => {
  const { below } = bandLineLayout({ band: { low: 6, high: 10 }, target: 6, now: null, after: null }, view)
  expect(below.map(({ text }) => text)).toEqual(['6', '10 %'])
})

test('labels that do not touch stay where they are', () => {
  const labels: Label[] = [
    { kind: 'now', text: '5.6', x: 100 },
    { kind: 'after', text: '8.0', x: 200 },
  ]
  expect(spread(labels, 340)).toEqual(labels)
})

test('labels never overlap and never leave the drawing', () => {
  const percent = fc.double({ min: 0, max: 40, noNaN: true })
  fc.assert(
    fc.property(percent, percent, percent, percent, fc.option(percent), (a, b, c, mean, after) => {
      const [low, target, high] = [a, b, c].toSorted((m, n) => m - n) as [number, number, number]
      const now = { mean, low90: Math.max(0, mean - 0.4), high90: mean + 0.4 }
      const { above, below } = bandLineLayout({ band: { low, high }, target, now, after }, view)
      for (const row of [above, below]) {
        for (const [i, label] of row.entries()) {
          expect(label.x - labelWidth(label) / 2).toBeGreaterThanOrEqual(-1e-9)
          expect(label.x + labelWidth(label) / 2).toBeLessThanOrEqual(340 + 1e-9)
          const next = row[i + 1]
          if (next !== undefined) {
            expect(next.x - label.x).toBeGreaterThanOrEqual((labelWidth(label) + labelWidth(next)) / 2)
          }
        }
      }
    }),
  )
})
