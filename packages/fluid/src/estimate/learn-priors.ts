import { type GroupPriors, publishedPriors, type ShopPriors, type Spread } from './priors.ts'
import { bestBranch, type ShopEstimate, type SumpState } from './shop-estimate.ts'
import { carryOff, evaporation, full, pours, size } from './state.ts'

/** Days after the first record at which what was learnt is adopted: ever more rarely, since it changes ever less. */
export function isAdoptionDay(firstDay: number, day: number): boolean {
  const weeks = (day - firstDay) / 28
  return weeks >= 1 && Number.isInteger(Math.log2(weeks) / 2)
}

/** What the published figures count for, in sumps and in readings, against what the shop shows. */
const worthSumps = 4
const worthReadings = 60
/** Fewer sumps than these have nothing in common: one with odd records would speak for the others. */
const fewestSumps = 3

/**
 * What a shop's sumps have in common, learnt from their records so far and drawn towards what is published the less there
 * is to learn from. Losses by kind of sump: mean and spread of the sumps' own estimates, by moments,
 *
 *     mean = Σ wᵢ xᵢ / Σ wᵢ,  wᵢ = 1 / (spread² + sdᵢ²)
 *
 * Noise from how large the surprises of readings that fitted were against what was expected of them.
 *
 * Source: empirical Bayes with moments, R. DerSimonian, N. Laird, Controlled Clinical Trials 7 (1986) 177.
 */
export function learnPriors({ sumps, priors, tally, firstDay }: ShopEstimate): ShopPriors {
  const groups: Record<string, GroupPriors> = {}
  const recorded = [...sumps.values()].filter(({ dataAt }) => dataAt !== null)
  const ofShop = (i: number, published: Spread, least: number) =>
    shrunk(
      recorded.map((sump) => knownOf(sump, i)),
      published,
      least,
    )
  const byGroup = Map.groupBy(recorded, ({ spec }) => spec.group)
  for (const [group, members] of byGroup) {
    const published = publishedPriors.groups[group] ?? publishedPriors.groups.default!
    const of = (i: number) => members.map((sump) => knownOf(sump, i))
    groups[group] = {
      evaporation: shrunk(of(evaporation), published.evaporation),
      carryOff: shrunk(of(carryOff), published.carryOff),
    }
  }
  const youngest = Math.max(...[...sumps.values()].map(({ at }) => at), firstDay ?? 0)
  return {
    version: priors.version + 1,
    from: { sumps: sumps.size, readings: tally.readings, days: Math.round(youngest - (firstDay ?? youngest)) },
    groups: { ...publishedPriors.groups, ...groups },
    pours: ofShop(pours, publishedPriors.pours, 0.045),
    full: ofShop(full, publishedPriors.full, 0.02),
    idle: priors.idle,
    unrest: within(priors.unrest * noiseRatio(tally.brix), 0.5, 1.6),
    brixNoise: scaled(priors.brixNoise, noiseRatio(tally.brix)),
    levelNoise: within(priors.levelNoise * noiseRatio(tally.level), 0.018, 0.06),
    roundOffset: priors.roundOffset,
  }
}

function knownOf(sump: SumpState, i: number): Known {
  const { mean, cov } = bestBranch(sump).belief
  return { mean: mean[i]!, variance: cov[i * size + i]! }
}

interface Known {
  mean: number
  variance: number
}

/** Mean and spread over sumps, with the published ones counting as some sumps more. */
function shrunk(known: readonly Known[], published: Spread, least = 0.15): Spread {
  if (known.length < fewestSumps) return published
  let spread = published.sd ** 2
  let mean = published.mean
  for (let round = 0; round < 20; round++) {
    let [weights, sum, squares] = [worthSumps / (2 * spread), (worthSumps / (2 * spread)) * published.mean, 0]
    for (const { mean: own, variance } of known) {
      const x = heard(own, mean, spread + variance)
      const weight = 1 / (spread + variance)
      weights += weight
      sum += weight * x
    }
    mean = sum / weights
    // The expected square of each sump's distance from the mean, given what is known of it.
    for (const { mean: own, variance } of known) {
      const x = heard(own, mean, spread + variance)
      const kept = spread / (spread + variance)
      squares += (kept * (x - mean)) ** 2 + kept * variance
    }
    spread = (squares + worthSumps * published.sd ** 2) / (known.length + worthSumps)
  }
  return { mean, sd: within(Math.sqrt(spread), least, 1.2) }
}

/** A sump far from all others is heard, but not louder than at two sds: its records may be nonsense. */
const heard = (x: number, mean: number, variance: number) =>
  Math.min(mean + 2 * Math.sqrt(variance), Math.max(mean - 2 * Math.sqrt(variance), x))

function noiseRatio({ count, squares }: { count: number; squares: number }): number {
  // Readings that did not fit are not counted: of a normal cut at 2.4 sd some 0.93 of the variance is left, of broader tails less.
  const ratio = (squares / 0.88 + worthReadings) / (count + worthReadings)
  return within(Math.sqrt(ratio), 0.6, 2)
}

const scaled = ({ fixed, share }: ShopPriors['brixNoise'], ratio: number) => ({
  fixed: within(fixed * ratio, 0.055, 0.2),
  share: within(share * ratio, 0.007, 0.03),
})

const within = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value))
