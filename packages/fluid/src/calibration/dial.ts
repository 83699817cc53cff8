import type { Percent, Sd } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'
import { monotoneFit } from '../statistics/monotone.ts'

/** What a mixer poured at a setting of its dial. */
export interface DialCheck {
  dial: number
  /** As measured, 0 to 100. */
  percent: Percent
}

/** What a mixer pours at every setting between the lowest and the highest that were checked. */
export interface DialCurve {
  /** [dial, percent], the dials strictly rising, the percents never turning back. */
  points: readonly (readonly [dial: number, percent: Percent])[]
  /** How the strength goes as the dial is turned up. */
  direction: 'rising' | 'falling'
  /** Of the checks about the curve; null where no two checks tell. */
  scatterSd: Sd | null
}

/**
 * The strength a mixer pours at each setting, from checks in any order: repeats at a setting are averaged, and what turns back is
 * pooled into its mean, since a mixer's strength only ever rises or only ever falls with its dial. Which of the two, the checks tell.
 *
 * Mixers drift with water pressure, concentrate temperature and wear: a curve holds for the conditions it was checked in.
 *
 * Source: pool adjacent violators, as in {@link monotoneFit}.
 *
 * @throws {RangeError} a quantity outside the range its field gives, checks at fewer than 2 settings
 * @example dialCurve([{ dial: 1, percent: 3 }, { dial: 2, percent: 6 }]).points // [[1, 3], [2, 6]]
 */
export function dialCurve(checks: readonly DialCheck[]): DialCurve {
  for (const [index, { dial, percent }] of checks.entries()) {
    requireRange(`checks.${index}.dial`, dial, { min: -1e6, max: 1e6 })
    requireRange(`checks.${index}.percent`, percent, { min: 0, max: 100 })
  }
  const dials = [...new Set(checks.map(({ dial }) => dial))].sort((a, b) => a - b)
  if (dials.length < 2) throw new OutOfRange('checks', dials.length, 'checks at 2 different settings at least')
  const means = dials.map((dial) => {
    const percents = checks.filter((check) => check.dial === dial).map(({ percent }) => percent)
    return { value: percents.reduce((sum, percent) => sum + percent, 0) / percents.length, weight: percents.length }
  })
  const rising = monotoneFit(means)
  const falling = monotoneFit(means.map(({ value, weight }) => ({ value: -value, weight }))).map((value) => -value)
  const missOf = (fitted: number[]) =>
    means.reduce((sum, { value, weight }, index) => sum + weight * (value - fitted[index]!) ** 2, 0)
  const direction = missOf(rising) <= missOf(falling) ? 'rising' : 'falling'
  const fitted = direction === 'rising' ? rising : falling
  return {
    points: dials.map((dial, index) => [dial, fitted[index]!] as const),
    direction,
    scatterSd: scatterOf(checks, dials, fitted),
  }
}

function scatterOf(checks: readonly DialCheck[], dials: number[], fitted: number[]): Sd | null {
  const degreesOfFreedom = checks.length - new Set(fitted).size
  if (degreesOfFreedom === 0) return null
  const squares = checks.reduce((sum, { dial, percent }) => sum + (percent - fitted[dials.indexOf(dial)]!) ** 2, 0)
  return Math.sqrt(squares / degreesOfFreedom)
}

/** The strength at a setting, or the settings between which it is known. */
export type DialStrength =
  | { outcome: 'strength'; percent: Percent }
  | { outcome: 'outside'; found: number; low: number; high: number }

/**
 * What a mixer pours at a setting: straight between two checked settings, never carried on beyond them.
 *
 * @throws {RangeError} a dial that is no number
 */
export function strengthAtDial({ points }: DialCurve, dial: number): DialStrength {
  requireRange('dial', dial, {})
  const [low, high] = [points[0]![0], points.at(-1)![0]]
  if (dial < low || dial > high) return { outcome: 'outside', found: dial, low, high }
  const above = Math.max(
    1,
    points.findIndex(([setting]) => setting >= dial),
  )
  const [[from, start], [to, end]] = [points[above - 1]!, points[above]!]
  const share = (dial - from) / (to - from)
  return { outcome: 'strength', percent: share === 1 ? end : start + share * (end - start) }
}

/** The setting for a target, or the strengths the mixer reaches. */
export type DialSetting = { outcome: 'setting'; dial: number } | { outcome: 'unreachable'; low: Percent; high: Percent }

/**
 * The setting at which a mixer pours a target: the inverse of {@link strengthAtDial}; where a stretch of the dial pours the same, its middle.
 *
 * @throws {RangeError} a target outside 0 to 100
 * @example dialFor(dialCurve([{ dial: 1, percent: 3 }, { dial: 2, percent: 6 }]), 5) // dial 1.666…
 */
export function dialFor({ points, direction }: DialCurve, target: Percent): DialSetting {
  requireRange('target', target, { min: 0, max: 100 })
  const along = direction === 'rising' ? points : [...points].reverse()
  const [low, high] = [along[0]![1], along.at(-1)![1]]
  if (target < low || target > high) return { outcome: 'unreachable', low, high }
  const flat = along.filter(([, percent]) => percent === target).map(([dial]) => dial)
  if (flat.length > 0) return { outcome: 'setting', dial: (flat[0]! + flat.at(-1)!) / 2 }
  const above = along.findIndex(([, percent]) => percent > target)
  const [[from, start], [to, end]] = [along[above - 1]!, along[above]!]
  return { outcome: 'setting', dial: from + ((target - start) / (end - start)) * (to - from) }
}

/** How far a mixer has moved since its curve was made, or that the curve does not reach there. */
export type DialDrift =
  | {
      outcome: 'drift'
      /** By the curve. */
      expected: Percent
      /** Measured less expected. */
      drift: Percent
      /** Share of the expected strength, 0.1 for 10 % more; null where nothing was expected. */
      relative: number | null
      /** Whether it is more than twice the scatter of the checks; null where that is unknown. */
      beyondScatter: boolean | null
    }
  | Extract<DialStrength, { outcome: 'outside' }>

/**
 * What a new check says against the curve made from earlier ones.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 */
export function dialDrift(curve: DialCurve, { dial, percent }: DialCheck): DialDrift {
  requireRange('percent', percent, { min: 0, max: 100 })
  const found = strengthAtDial(curve, dial)
  if (found.outcome === 'outside') return found
  const drift = percent - found.percent
  return {
    outcome: 'drift',
    expected: found.percent,
    drift,
    relative: found.percent === 0 ? null : drift / found.percent,
    beyondScatter: curve.scatterSd === null ? null : Math.abs(drift) > 2 * curve.scatterSd,
  }
}
