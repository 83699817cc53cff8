import {
  crossingOf,
  type EstimatedDoubt,
  estimateOf,
  type Figure,
  type Reader,
  type RecipeBench,
  sayDoubt,
  sayLearnt,
  trueMarks,
  type Untouched,
  untouched,
} from '@sumpbook/fluid'
import type { Sump } from '../schema/things/index.ts'
import { benchOf } from '../today/bench.ts'
import type { CrossingAnswer, DoubtAnswer, EstimateDocument, SumpAnswer } from './answer-types.ts'
import { dayMs, type ShopClock } from './shop-clock.ts'
import type { ShopStanding } from './shop-standing.ts'
import { recipeBy } from './sump-recipe.ts'

/** @param ahead days, each × 24 hours after `at` */
export function estimateDocument(
  standing: ShopStanding,
  { at, ahead, sumps }: { at: string; ahead: readonly number[]; sumps: readonly Sump[] },
  reader: Reader,
): EstimateDocument {
  const { name, timeZone, units } = standing.things.shop
  const answers = sumps.map((sump) => [sump.id, sumpAnswer(standing, sump, ahead, reader)] as const)
  const { version, from } = standing.shop.priors
  const learnt = { version, from, text: sayLearnt(standing.shop.priors, reader) }
  return { at, shop: { name, timeZone, units }, learnt, sumps: Object.fromEntries(answers) }
}

function sumpAnswer(standing: ShopStanding, sump: Sump, ahead: readonly number[], reader: Reader): SumpAnswer {
  const { shop, clock, ms } = standing
  const asked = untouched(shop, sump.id, clock.at(ms))
  const estimate = estimateOf(asked, ahead)
  const bench = benchFor(standing, sump)
  return {
    name: sump.name,
    now: estimate.now,
    ahead: estimate.ahead.map(({ days, concentration, volume, hardness }) => ({
      days,
      concentration,
      volume,
      hardness,
    })),
    crossing: crossingFor(standing, asked, { sump, bench, mark: estimate.now.markVolume }),
    recipe: recipeBy(estimate, bench, reader),
    doubts: estimate.doubts.map((doubt) => doubtAnswer(doubt, clock, reader)),
    dataAt: estimate.dataAt === null ? null : instantText(clock.instantOf(estimate.dataAt)),
  }
}

export function doubtAnswer(doubt: EstimatedDoubt, clock: ShopClock, reader: Reader): DoubtAnswer {
  return { ...doubt, at: instantText(clock.instantOf(doubt.at)), text: sayDoubt(doubt, reader) }
}

export function benchFor({ memory, things, ms }: ShopStanding, sump: Sump): RecipeBench {
  const charge = memory.sumps.get(sump.id)?.charge ?? { fluid: sump.fluid, lot: null }
  return benchOf(sump, charge, things, instantText(ms))
}

/** Which limit of the sump or its fluid is crossed first; none of a straight oil, which has no mix. */
export function crossingFor(
  { memory, things, ms }: ShopStanding,
  asked: Untouched,
  { sump, bench, mark }: { sump: Sump; bench: RecipeBench; mark: Figure },
): CrossingAnswer | null {
  if (bench.class === 'straight-oil') return null
  const fluid = things.fluid.get(memory.sumps.get(sump.id)?.charge?.fluid ?? sump.fluid)
  const limits = { ...fluid?.limits, ...sump.limits }
  const concentration = { ...fluid?.limits?.concentration, ...sump.limits?.concentration }
  const crossing = crossingOf(asked, {
    concentration: { low: concentration.low, high: concentration.high },
    volumeLow: trueMarks(bench, mark).minVolume ?? undefined,
    hardnessHigh: limits.hardness?.high,
    chlorideHigh: limits.chloride?.high,
  })
  if (crossing === null) return null
  const day = (days: number) => instantText(ms + days * dayMs)
  const { limit, probability, earliest, likely, latest } = crossing
  return { limit, probability, earliest: day(earliest), likely: day(likely), latest: day(latest) }
}

export const instantText = (ms: number): string => new Date(Math.round(ms)).toISOString()
