import { copyBelief, mergeBeliefs } from '../filter/index.ts'
import { percentFromChart } from '../refractometer/product-chart.ts'
import type { ScaleInUse } from '../refractometer/scale-on.ts'
import type { DoubtKind, EstimatedDoubt } from './answer-types.ts'
import type { ReadingEvent } from './events.ts'
import { habitsOf } from './habits.ts'
import {
  classOf,
  middleOf,
  type Sight,
  sightOfBrix,
  sightOfLevel,
  sightOfMinerals,
  sightOfTitration,
  takeClass,
  takeSight,
  varianceOf,
} from './observe.ts'
import type { ShopPriors } from './priors.ts'
import type { RoundOffset } from './round.ts'
import {
  type Branch,
  bestBranch,
  probabilities,
  type ShopEstimate,
  type SumpState,
  type Surprise,
} from './shop-estimate.ts'
import { chloride, fill, hardness, scale, strength } from './state.ts'
import { type Habits, type Story, type Telling, tellings } from './stories.ts'
import { visited } from './visits.ts'

/** From how many standard deviations on a reading is a surprise with more than one story. */
const surprising = 1.8
/** More branches than this are never followed. */
const mostBranches = 6
/** A branch less likely than this is dropped. */
const leastShare = 0.02

/** What a reading says of each quantity, seen from one branch. */
type Quantity = 'brix' | 'titration' | 'seen'

const sightsOf = (branch: Branch, sump: SumpState, reading: ReadingEvent, offset: RoundOffset, priors: ShopPriors) => ({
  brix: () => brixSight(branch, reading, offset, priors),
  titration: () => (reading.titration === null ? null : sightOfTitration(branch.belief, middleOf(reading.titration))),
  seen: () =>
    reading.seen === null
      ? null
      : sightOfLevel(branch.belief, { share: reading.seen / sump.plate, running: reading.pumps === 'running' }, priors),
})

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

/**
 * Takes a reading into every branch of a sump that has been brought up to its time. One that fits is simply learnt from; at
 * a surprise every story that could be behind it becomes a branch, and later readings settle which.
 */
export function takeReading(shop: ShopEstimate, sump: SumpState, reading: ReadingEvent, offset: RoundOffset): void {
  const { priors, tally } = shop
  const best = bestBranch(sump)
  const worst = worstOf(best, sump, reading, offset, priors)
  if (worst === null) {
    for (const branch of sump.branches) takeMinerals(branch, reading)
    return
  }
  tally.readings++
  if (sump.branches.length === 1 && worst.z < opensFrom(habitsOf(sump, shop))) {
    count(shop, best, sump, reading, offset)
    takeAll(best, sump, reading, { offset, priors, without: null })
    takeMinerals(best, reading)
  } else {
    weigh(shop, sump, reading, { offset, worst })
    sump.lastSurprise = null
    for (const branch of sump.branches) takeMinerals(branch, reading)
  }
  if (reading.brix !== null || reading.titration !== null) {
    for (const surprise of sump.surprises) if (surprise.entry !== reading.id) surprise.readings++
    visited(sump, shop.visits)
    sump.takenOff = 0.5 * sump.takenOff + 0.5 * offset.mean
    sump.lastReadingAt = reading.at
    sump.lastFill = bestBranch(sump).belief.mean[fill]!
    sump.pouredSince = false
  }
  settle(sump)
}

/** Where a pour was due that nobody wrote, less of a surprise will do. */
const opensFrom = ({ forgotten }: Habits) => (forgotten > 0.08 ? 1.1 : surprising)

interface Worst {
  quantity: Quantity
  z: number
  sight: Sight
  sd: number
}

/** The quantity that surprises most, in standard deviations; null where nothing was read that a balance expects. */
function worstOf(
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  offset: RoundOffset,
  priors: ShopPriors,
): Worst | null {
  let worst: Worst | null = null
  const sights = sightsOf(branch, sump, reading, offset, priors)
  for (const quantity of ['brix', 'seen', 'titration'] as const) {
    const sight = sights[quantity]()
    if (sight === null) continue
    const sd = Math.sqrt(varianceOf(branch.belief, sight))
    const z = Math.abs(sight.read - sight.expected) / sd
    if (worst === null || z > worst.z) worst = { quantity, z, sight, sd }
  }
  return worst
}

/** Takes all figures one after the other; the answer is the logarithm of how likely they were together. */
function takeAll(
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  { offset, priors, without }: { offset: RoundOffset; priors: ShopPriors; without: Quantity | null },
): number {
  let likely = 0
  const sights = sightsOf(branch, sump, reading, offset, priors)
  for (const quantity of ['seen', 'brix', 'titration'] as const) {
    if (quantity === without) continue
    const sight = sights[quantity]()
    if (sight !== null) likely += takeSight(branch.belief, sight)
  }
  keepInRange(branch)
  return likely
}

function takeMinerals(branch: Branch, reading: ReadingEvent): void {
  for (const [value, which] of [
    [reading.hardness, hardness],
    [reading.chloride, chloride],
  ] as const) {
    if (value === null) continue
    const pads = classOf(value)
    if (pads === null) takeSight(branch.belief, sightOfMinerals(branch.belief, which, value as number))
    else takeClass(branch.belief, which, pads.low, pads.high)
  }
  keepInRange(branch)
}

/** Nothing is less than nothing. */
function keepInRange({ belief: { mean } }: Branch): void {
  mean[fill] = Math.min(5, Math.max(0.02, mean[fill]!))
  mean[strength] = Math.min(99, Math.max(0.02, mean[strength]!))
  mean[hardness] = Math.max(0.5, mean[hardness]!)
  mean[chloride] = Math.max(0.1, mean[chloride]!)
  mean[scale] = Math.min(2.5, Math.max(-2.5, mean[scale]!))
}

function weigh(
  shop: ShopEstimate,
  sump: SumpState,
  reading: ReadingEvent,
  { offset, worst }: { offset: RoundOffset; worst: Worst },
): void {
  const shares = probabilities(sump.branches)
  const { priors } = shop
  const habits = habitsOf(sump, shop)
  const from = opensFrom(habits)
  const opens = worst.z >= from
  const surprise: Surprise | null = opens ? surpriseOf(sump, reading, worst) : null
  const days = sump.lastReadingAt === null ? 7 : reading.at - sump.lastReadingAt
  const candidates: Branch[] = []
  for (const [i, branch] of sump.branches.entries()) {
    const here = opens ? worstOf(branch, sump, reading, offset, priors)! : worst
    const tells = surprise !== null && (shares[i]! > 0.05 || i === 0) && here.z >= from
    if (tells) {
      for (const telling of tellings(habits, branch.belief.mean[fill]!)) {
        const told = followed(branch, sump, telling, { surprise, days })
        told.weight += takeAll(told, sump, reading, { offset, priors, without: null })
        candidates.push(told)
      }
      candidates.push(...wrongFluid(branch, sump, reading, { surprise, offset, priors }))
      candidates.push(setAside(branch, sump, reading, { surprise, offset, priors, worst: here }))
    }
    const plain = tells ? copyBranch(branch) : branch
    if (surprise !== null) plain.stories.push({ surprise: surprise.number, story: 'stands', volume: 0 })
    plain.weight += takeAll(plain, sump, reading, { offset, priors, without: null })
    candidates.push(plain)
  }
  sump.branches = likeliest(candidates)
}

const copyBranch = ({ belief, weight, fluids, stories }: Branch): Branch => ({
  belief: copyBelief(belief),
  weight,
  fluids,
  stories: [...stories],
})

/** A branch on which a story has happened just before the reading. */
function followed(
  branch: Branch,
  sump: SumpState,
  { story, prior, overTime, apply }: Telling,
  { surprise, days }: { surprise: Surprise; days: number },
): Branch {
  const told = copyBranch(branch)
  const before = litresOf(told, sump)
  apply?.(told.belief)
  const volume = story === 'stands' ? 0 : litresOf(told, sump) - before
  told.stories.push({ surprise: surprise.number, story, volume })
  const often = story === 'stands' ? 1 + 0.5 * doubtsLately(sump) : 1 / (1 + 0.5 * doubtsLately(sump))
  told.weight += Math.log(prior * often * (overTime ? Math.min(4, Math.max(0.3, days / 7)) : 1))
  return told
}

/**
 * Doubts of the last two months. A sump whose records never fit is likelier to be another sump than it is taken for than to be
 * written up wrongly all the time.
 */
const doubtsLately = ({ doubts, at }: SumpState): number => doubts.filter((doubt) => at - doubt.at < 60).length

export const litresOf = ({ belief: { mean } }: Branch, { plate }: SumpState): number =>
  mean[fill]! * Math.exp(mean[scale]!) * plate

/** The figure is set aside: misread, or another sump's. */
function setAside(
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  { surprise, offset, priors, worst }: { surprise: Surprise; offset: RoundOffset; priors: ShopPriors; worst: Worst },
): Branch {
  const told = copyBranch(branch)
  told.stories.push({ surprise: surprise.number, story: 'set-aside', volume: 0 })
  told.weight += takeAll(told, sump, reading, { offset, priors, without: worst.quantity })
  const misread = worst.quantity === 'brix' ? 0.013 * misreadBrix(worst.sight, worst.sd) : 0.008 * misreadOther(worst)
  let other = 0
  if (worst.quantity === 'brix') {
    const { read } = worst.sight
    for (const neighbour of offset.others) {
      if (neighbour.sump !== reading.sump)
        other += normal(read, neighbour.expected, neighbour.sd) / offset.others.length
    }
  }
  const exchanged = 0.006 * other
  surprise.otherSump = exchanged / (misread + exchanged)
  told.weight += Math.log((misread + exchanged) / (1 + 0.5 * doubtsLately(sump)))
  return told
}

const normal = (x: number, mean: number, sd: number) =>
  Math.exp(-0.5 * ((x - mean) / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI))

/** How figures are misread: the point slips, a mark or two are miscounted, or anything (common practice, no source). */
function misreadBrix({ read, expected }: Sight, sd: number): number {
  const near = Math.max(expected, 0.1)
  let sum = 0.3 * normal(read, near, 2.5)
  sum += 0.15 * normal(read, 10 * near, 10 * sd) + 0.15 * normal(read, near / 10, sd / 10 + 0.03)
  for (const lines of [1, 2, 5]) {
    sum += 0.05 * (normal(read, near + lines, sd) + normal(read, near - lines, sd))
  }
  return sum + 0.1 / 40
}

function misreadOther({ quantity, sight }: Worst): number {
  const reach = quantity === 'seen' ? 0.3 : 3
  return 0.9 * normal(sight.read, sight.expected, reach) + 0.1 / (quantity === 'seen' ? 2 : 30)
}

/** What was poured last may have been another product than written. */
function wrongFluid(
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  { surprise, offset, priors }: { surprise: Surprise; offset: RoundOffset; priors: ShopPriors },
): Branch[] {
  if (!sump.pouredSince) return []
  return [...reading.scales.keys()].flatMap((fluid) => {
    if (branch.fluids.every((one) => one.fluid === fluid || one.share < 0.5)) return []
    const told = copyBranch(branch)
    told.fluids = [{ fluid, share: 1 }]
    told.stories.push({ surprise: surprise.number, story: 'wrong-fluid', volume: 0 })
    told.weight += Math.log(0.001 / Math.max(1, reading.scales.size - 1))
    told.weight += takeAll(told, sump, reading, { offset, priors, without: null })
    return [told]
  })
}

function surpriseOf(sump: SumpState, { id, at }: ReadingEvent, { quantity, sight, sd }: Worst): Surprise {
  const unit = quantity === 'seen' ? sump.plate : 1
  const surprise: Surprise = {
    number: sump.nextSurprise++,
    entry: id,
    at,
    found: {
      quantity,
      read: sight.read * unit,
      expected: sight.expected * unit,
      low90: Math.max(0, sight.expected - 1.645 * sd) * unit,
      high90: (sight.expected + 1.645 * sd) * unit,
    },
    readings: 0,
    otherSump: 0,
  }
  sump.surprises.push(surprise)
  return surprise
}

/** The likeliest branches, few enough to follow. */
function likeliest(candidates: readonly Branch[]): Branch[] {
  const sorted = candidates.filter(({ weight }) => Number.isFinite(weight)).sort((a, b) => b.weight - a.weight)
  if (sorted.length === 0) return [candidates.at(-1)!].map((branch) => ({ ...branch, weight: 0 }))
  const most = sorted[0]!.weight
  return sorted
    .filter(({ weight }) => weight > most + Math.log(leastShare))
    .slice(0, mostBranches)
    .map((branch) => ({ ...branch, weight: branch.weight - most }))
}

/** A surprise is settled by three more readings, a month, or when one story is left; then its branches become one. */
export function settle(sump: SumpState): void {
  while (sump.surprises.length > 0) {
    const surprise = sump.surprises.find((one) => isSettled(one, sump))
    if (surprise === undefined) return
    close(sump, surprise)
  }
}

function isSettled(surprise: Surprise, sump: SumpState): boolean {
  if (surprise.readings >= 4 || sump.at - surprise.at > 35) return true
  if (sump.surprises.length > 3 && sump.surprises[0] === surprise) return true
  const likely = storiesOf(sump, surprise)[0]!.probability
  return likely > 0.99 && (surprise.readings >= 1 || storiesOf(sump, surprise)[0]!.story === 'stands')
}

/** The stories of a surprise, likeliest first, with the litres they speak of. */
export function storiesOf(
  { branches }: SumpState,
  { number }: Surprise,
): { story: Story; probability: number; volume: number }[] {
  const told = new Map<Story, { story: Story; probability: number; volume: number }>()
  for (const [i, probability] of probabilities(branches).entries()) {
    const { story, volume } = branches[i]!.stories.find(({ surprise }) => surprise === number) ?? {
      story: 'stands' as const,
      volume: 0,
    }
    const before = told.get(story) ?? { story, probability: 0, volume: 0 }
    told.set(story, {
      story,
      probability: before.probability + probability,
      volume: before.volume + probability * volume,
    })
  }
  return [...told.values()]
    .map((one) => ({ ...one, volume: one.probability > 0 ? one.volume / one.probability : 0 }))
    .sort((a, b) => b.probability - a.probability)
}

function close(sump: SumpState, surprise: Surprise): void {
  const doubt = doubtOf(sump, surprise, false)
  if (doubt !== null) sump.doubts.push(doubt)
  sump.surprises = sump.surprises.filter((one) => one !== surprise)
  for (const branch of sump.branches) {
    branch.stories = branch.stories.filter((one) => one.surprise !== surprise.number)
  }
  joinAlike(sump)
}

/** Branches that no open surprise tells apart become one, with their common mean and spread. */
export function joinAlike(sump: SumpState): void {
  const groups = new Map<string, Branch[]>()
  for (const branch of sump.branches) {
    const key = branch.stories.map(({ surprise, story }) => `${surprise} ${story}`).join()
    groups.set(key, [...(groups.get(key) ?? []), branch])
  }
  sump.branches = [...groups.values()].map(join)
}

function join(branches: readonly Branch[]): Branch {
  if (branches.length === 1) return branches[0]!
  const most = Math.max(...branches.map(({ weight }) => weight))
  const shares = branches.map(({ weight }) => Math.exp(weight - most))
  const best = branches[shares.indexOf(1)]!
  const joined = copyBranch(best)
  mergeBeliefs(
    joined.belief,
    branches.map(({ belief }) => belief),
    shares,
  )
  joined.weight = most + Math.log(shares.reduce((sum, share) => sum + share, 0))
  return joined
}

/** The doubt that a surprise comes to; null where nothing is likely to be wrong. */
export function doubtOf(sump: SumpState, surprise: Surprise, open: boolean): EstimatedDoubt | null {
  type Told = { kind: DoubtKind | 'stands'; probability: number; volume: number }
  const told = storiesOf(sump, surprise).flatMap(({ story, probability, volume }): Told[] =>
    story !== 'set-aside'
      ? [{ kind: story, probability, volume }]
      : [
          { kind: 'misread', probability: probability * (1 - surprise.otherSump), volume: 0 },
          { kind: 'wrong-sump', probability: probability * surprise.otherSump, volume: 0 },
        ],
  )
  told.sort((a, b) => b.probability - a.probability)
  const likeliest = told[0]!
  const asideTogether = told.reduce(
    (sum, { kind, probability }) => (kind === 'misread' || kind === 'wrong-sump' ? sum + probability : sum),
    0,
  )
  if (
    likeliest.kind === 'stands' ||
    Math.max(likeliest.probability, isAside(likeliest.kind) ? asideTogether : 0) < 0.5
  ) {
    return null
  }
  const { kind, volume } = likeliest
  return {
    kind,
    entry: surprise.entry,
    entries: [surprise.entry],
    at: surprise.at,
    probability: Math.max(likeliest.probability, 0.5),
    volume: kind.startsWith('unlogged') ? volume : null,
    found: surprise.found,
    open,
    others: told
      .filter((one) => one.kind !== kind && one.probability > 0.005)
      .map((one) => ({ kind: one.kind, probability: one.probability })),
  }
}

const isAside = (kind: string) => kind === 'misread' || kind === 'wrong-sump'

/** Counts readings that fit, to learn their noise from. */
function count(
  { tally, priors }: ShopEstimate,
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  offset: RoundOffset,
): void {
  const sights = sightsOf(branch, sump, reading, offset, priors)
  const brix = sights.brix()
  if (brix !== null) {
    const surprise = (brix.read - brix.expected) / Math.sqrt(varianceOf(branch.belief, brix))
    add(tally.brix, surprise ** 2)
    if (sump.lastSurprise !== null) add(tally.brixTwice, surprise * sump.lastSurprise)
    sump.lastSurprise = surprise
  }
  const seen = sights.seen()
  if (seen !== null) add(tally.level, (seen.read - seen.expected) ** 2 / varianceOf(branch.belief, seen))
}

function add(of: { count: number; squares: number }, square: number): void {
  of.count++
  of.squares += square
}
