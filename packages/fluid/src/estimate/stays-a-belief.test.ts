import { expect, test } from 'vitest'
import { type Belief, copyBelief } from '../filter/index.ts'
import { holdToBounds } from './bounds.ts'
import { pass, takeBack } from './flow.ts'
import { sightOfBrix, sightOfLevel, sightOfMinerals, sightOfTitration, takeClass, takeSight } from './observe.ts'
import { chargeAnew, pourShare, pourUpTo, takeOut } from './pour.ts'
import { publishedPriors } from './priors.ts'
import { bestBranch, newSump } from './shop-estimate.ts'
import { chloride, fill, hardness, size, strength } from './state.ts'
import { chance, normalFrom, specOf } from './testing.ts'
import { pourOf } from './written-pour.ts'

/** The least pivot of the correlations, a billionth added: under 0 where the covariance of anything would be. */
function leastPivot({ cov }: Belief): number {
  const n = size
  const known = Array.from({ length: n }, (_, i) => i).filter((i) => cov[i * (n + 1)]! > 0)
  const a = known.map((i) => known.map((j) => cov[i * n + j]! / Math.sqrt(cov[i * (n + 1)]! * cov[j * (n + 1)]!)))
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < a.length; k++) {
    const pivot = a[k]![k]! + 1e-9
    least = Math.min(least, pivot)
    if (pivot <= 0) return least
    for (let i = k + 1; i < a.length; i++)
      for (let j = k + 1; j < a.length; j++) a[i]![j]! -= (a[i]![k]! * a[k]![j]!) / pivot
  }
  return least
}

test('after a hundred thousand days, pours and readings of any kind a belief is still one', () => {
  const next = chance(3)
  const belief = copyBelief(bestBranch(newSump(specOf(), 0, publishedPriors)).belief)
  const { mean } = belief
  for (let k = 0; k < 100_000; k++) {
    const kind = Math.floor(next() * 14)
    const pour = pourOf({ strength: 12 * next(), water: { hardness: 300 * next(), chloride: null } })
    if (kind < 5) pass(belief, { days: 7 * next(), evaporation: 5 * next(), carryOff: 5 * next() }, 0.5 + next())
    if (kind === 5) pourShare(belief, 0.3 * next(), 0.02, pour)
    if (kind === 6) pourUpTo(belief, 0.03, pour)
    if (kind === 7 && next() < 0.2) takeOut(belief, 0.4 * next(), 0.02)
    if (kind === 8 && next() < 0.1)
      chargeAnew(belief, { heel: 0.1 * next(), heelSd: 0.03, share: next() < 0.5 ? null : next(), shareSd: 0.05 }, pour)
    if (kind === 9) {
      const brix = Math.max(0, mean[strength]! + normalFrom(next))
      const seen = { brix, perPercent: 1, offset: 0, offsetVariance: 0.006, resolution: 0.1 }
      takeSight(belief, sightOfBrix(belief, seen, publishedPriors))
    }
    if (kind === 10) {
      const seen = { share: mean[fill]! + 0.1 * normalFrom(next), running: next() < 0.5 }
      takeSight(belief, sightOfLevel(belief, seen, publishedPriors))
    }
    if (kind === 11) takeSight(belief, sightOfTitration(belief, Math.max(0, mean[strength]! + normalFrom(next))))
    if (kind === 12) takeClass(belief, hardness, 100 * Math.floor(4 * next()), 100 * Math.floor(5 + 4 * next()))
    if (kind === 13) {
      takeSight(belief, sightOfMinerals(belief, chloride, 200 * next()))
      if (next() < 0.1) takeBack(belief, 5 * next(), publishedPriors.idle)
    }
    holdToBounds(belief)
    if (k % 500 !== 0) continue
    expect([...mean, ...belief.cov].every(Number.isFinite)).toBe(true)
    for (let i = 0; i < size; i++)
      for (let j = 0; j < i; j++) expect(belief.cov[i * size + j]).toBe(belief.cov[j * size + i])
    expect(leastPivot(belief)).toBeGreaterThan(0)
  }
})
