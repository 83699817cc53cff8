import { percentFromChart } from '../../refractometer/product-chart.ts'
import type { ScaleInUse } from '../../refractometer/scale-on.ts'
import { holdToBounds } from '../bounds.ts'
import type { ReadingEvent, Reported } from '../events.ts'
import {
  classOf,
  keepSight,
  middleOf,
  type Sight,
  sightOfBrix,
  sightOfLevel,
  sightOfMinerals,
  sightOfTitration,
  takeClass,
  takeSight,
  varianceOf,
} from '../observe.ts'
import type { ShopPriors } from '../priors.ts'
import type { Branch, SumpState } from '../shop-estimate.ts'
import { chloride, hardness } from '../state.ts'
import type { RoundOffset } from './round.ts'

/** Quantities of a reading that the balance expects. */
export const quantities = ['seen', 'brix', 'titration'] as const
export type Quantity = (typeof quantities)[number]

/** What a reading is seen with: the round's common error and the shop's noise. */
export interface Circumstances {
  offset: RoundOffset
  priors: ShopPriors
}

/** One quantity of a reading as a branch expects it; null where it was not read or cannot be expected. */
export function sightOf(
  quantity: Quantity,
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  { offset, priors }: Circumstances,
): Sight | null {
  switch (quantity) {
    case 'brix':
      return brixSight(branch, reading, offset, priors)
    case 'titration':
      return reading.titration === null ? null : sightOfTitration(branch.belief, middleOf(reading.titration))
    case 'seen':
      return reading.seen === null
        ? null
        : sightOfLevel(
            branch.belief,
            { share: reading.seen / sump.plate, running: reading.pumps === 'running' },
            priors,
          )
  }
}

/** The refractometer's sight of a branch; null where nothing was read or no scale is known. */
export function brixSight(
  branch: Branch,
  reading: ReadingEvent,
  offset: RoundOffset,
  priors: ShopPriors,
): Sight | null {
  if (reading.brix === null) return null
  const brix = middleOf(reading.brix)
  const perPercent = brixPerPercent(branch, brix, reading.scales)
  if (perPercent === null) return null
  const seen = {
    brix,
    perPercent,
    offset: offset.mean,
    offsetVariance: offset.variance,
    resolution: reading.resolution,
  }
  return sightOfBrix(branch.belief, seen, priors)
}

/** How many °Brix a percent of the mix shows: Σ share / factor over its products; null without any scale. */
function brixPerPercent({ fluids }: Branch, brix: number, scales: ReadonlyMap<string, ScaleInUse>): number | null {
  let sum = 0
  let known = 0
  for (const { fluid, share } of fluids) {
    const scaled = scales.get(fluid)
    if (scaled === undefined) continue
    sum += share / factorAt(scaled, brix)
    known += share
  }
  return known > 0.02 ? sum / known : null
}

/** A chart as the factor from nothing to the reading. */
function factorAt(scaled: ScaleInUse, brix: number): number {
  if ('factor' in scaled) return scaled.factor
  const [first, last] = [scaled.chart[0]!, scaled.chart.at(-1)!]
  const at = Math.min(last[0], Math.max(first[0], brix, 0.1))
  const point = percentFromChart(scaled.chart, at)
  return point.outcome === 'on-chart' && point.percent > 0 ? point.percent / at : last[1] / last[0]
}

/** The quantity of a reading that surprises most. */
export interface Surprising {
  quantity: Quantity
  /** How far it is from what was expected, in sds. */
  z: number
  sight: Sight
  sd: number
}

/** The quantity that surprises most, in standard deviations; null where nothing was read that a balance expects. */
export function mostSurprising(
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  circumstances: Circumstances,
): Surprising | null {
  let most: Surprising | null = null
  for (const quantity of quantities) {
    const sight = sightOf(quantity, branch, sump, reading, circumstances)
    if (sight === null) continue
    const sd = Math.sqrt(varianceOf(branch.belief, sight))
    const z = Math.abs(sight.read - sight.expected) / sd
    if (most === null || z > most.z) most = { quantity, z, sight: keepSight(sight), sd }
  }
  return most
}

/** Takes all figures one after the other; the answer is the logarithm of how likely they were together. */
export function takeAll(
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  circumstances: Circumstances,
  without: Quantity | null = null,
): number {
  let likely = 0
  for (const quantity of quantities) {
    if (quantity === without) continue
    const sight = sightOf(quantity, branch, sump, reading, circumstances)
    if (sight !== null) likely += takeSight(branch.belief, sight)
  }
  holdToBounds(branch.belief)
  return likely
}

/** What is dissolved is learnt from as it is read: nothing else hangs on it. */
export function takeMinerals(branch: Branch, reading: ReadingEvent): void {
  if (reading.hardness !== null) takeReported(branch, hardness, reading.hardness)
  if (reading.chloride !== null) takeReported(branch, chloride, reading.chloride)
  holdToBounds(branch.belief)
}

function takeReported({ belief }: Branch, which: typeof hardness | typeof chloride, value: Reported): void {
  const pads = classOf(value)
  if (pads === null) takeSight(belief, sightOfMinerals(belief, which, value as number))
  else takeClass(belief, which, pads.low, pads.high)
}
