import { blur } from '../../filter/index.ts'
import { habitsOf } from '../doubts/habits.ts'
import { settle } from '../doubts/settle.ts'
import { forgottenPour, visited } from '../doubts/visits.ts'
import { weigh } from '../doubts/weigh.ts'
import type { ReadingEvent } from '../events.ts'
import { varianceOf } from '../observe.ts'
import { type Branch, bestBranch, type ShopEstimate, type SumpState } from '../shop-estimate.ts'
import { fill } from '../state.ts'
import type { RoundOffset } from './round.ts'
import { type Circumstances, mostSurprising, sightOf, takeAll, takeMinerals } from './sights.ts'

/** From how many standard deviations on a reading is a surprise with more than one story. */
const surprising = 2

/**
 * Takes a reading into every branch of a sump that has been brought up to its time. One that fits is simply learnt from; at
 * a surprise every story that could be behind it becomes a branch, and later readings settle which.
 */
export function takeReading(shop: ShopEstimate, sump: SumpState, reading: ReadingEvent, offset: RoundOffset): void {
  const { priors, tally } = shop
  const circumstances = { offset, priors }
  const best = bestBranch(sump)
  if (sump.lastFill === null && reading.seen !== null) expectAnyLevel(sump)
  const most = mostSurprising(best, sump, reading, circumstances)
  if (most === null) {
    for (const branch of sump.branches) takeMinerals(branch, reading)
    return
  }
  tally.readings++
  const forgotten = forgottenPour(sump, shop.visits)
  const from = opensFrom(forgotten)
  if (sump.branches.length === 1 && most.z < from) {
    count(shop, best, sump, reading, circumstances)
    takeAll(best, sump, reading, circumstances)
    takeMinerals(best, reading)
  } else {
    weigh(sump, reading, { circumstances, habits: habitsOf(sump, shop, forgotten), most, from })
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

/** Where a sump stands when it is looked at for the first time nobody knows: no level is a surprise then. */
function expectAnyLevel({ branches, dataAt }: SumpState): void {
  if (dataAt === null) for (const { belief } of branches) blur(belief, fill, 0.3 ** 2)
}

/** Where a pour was due that nobody wrote, less of a surprise will do. */
const opensFrom = (forgotten: number) => (forgotten > 0.3 ? 0 : forgotten > 0.08 ? 1.3 : surprising)

/** Counts readings that fit, to learn their noise from. */
function count(
  { tally }: ShopEstimate,
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  circumstances: Circumstances,
): void {
  const brix = sightOf('brix', branch, sump, reading, circumstances)
  if (brix !== null) {
    const surprise = (brix.read - brix.expected) / Math.sqrt(varianceOf(branch.belief, brix))
    add(tally.brix, surprise ** 2)
  }
  const seen = sightOf('seen', branch, sump, reading, circumstances)
  if (seen !== null) add(tally.level, (seen.read - seen.expected) ** 2 / varianceOf(branch.belief, seen))
}

function add(of: { count: number; squares: number }, square: number): void {
  of.count++
  of.squares += square
}
