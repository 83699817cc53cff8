import { dropBelief } from '../../filter/index.ts'
import { type Circumstances, mostSurprising, type Surprising, takeAll } from '../entries/sights.ts'
import type { ReadingEvent } from '../events.ts'
import { type Branch, copyBranch, litresOf, probabilities, type SumpState, type Surprise } from '../shop-estimate.ts'
import { fill } from '../state.ts'
import { notThisSumps } from './misread.ts'
import { type Habits, type Story, type Telling, tellings } from './stories.ts'

/** More branches than this are never followed. */
const mostBranches = 5
/** A branch less likely than this is dropped. */
const leastShare = 0.03

/** What a surprise is weighed with. */
export interface Weighing {
  circumstances: Circumstances
  habits: Habits
  /** What surprises most in the likeliest branch. */
  most: Surprising
  /** From how many sds on it is a surprise. */
  from: number
}

/**
 * Weighs every branch of a sump by a reading. At a surprise each branch that it surprises splits into the stories that could be
 * behind it; the likeliest few are followed.
 */
export function weigh(sump: SumpState, reading: ReadingEvent, weighing: Weighing): void {
  const { circumstances, habits, most, from } = weighing
  const shares = probabilities(sump.branches)
  const opens = most.z >= from
  const surprise: Surprise | null = opens ? openSurprise(sump, reading, most) : null
  const days = sump.lastReadingAt === null ? 7 : reading.at - sump.lastReadingAt
  const candidates: Branch[] = []
  for (const [i, branch] of sump.branches.entries()) {
    const here = opens ? mostSurprising(branch, sump, reading, circumstances)! : most
    const tells = surprise !== null && (shares[i]! > 0.05 || i === 0) && here.z >= from
    if (tells) {
      for (const telling of tellings(habits, branch.belief.mean[fill]!)) {
        if (!couldBe(telling.story, here)) continue
        const told = followed(branch, sump, telling, { surprise, days })
        told.weight += takeAll(told, sump, reading, circumstances)
        candidates.push(told)
      }
      candidates.push(...wrongFluid(branch, sump, reading, { surprise, circumstances }))
      candidates.push(setAside(branch, sump, reading, { surprise, circumstances, most: here }))
    }
    const plain = tells ? copyBranch(branch) : branch
    if (surprise !== null) plain.stories.push({ surprise: surprise.number, story: 'stands', volume: 0 })
    if (tells) plain.weight += Math.log(1 - habits.forgotten)
    plain.weight += takeAll(plain, sump, reading, circumstances)
    candidates.push(plain)
    if (tells) dropBelief(branch.belief)
  }
  sump.branches = likeliest(candidates)
}

/** Stories that move a quantity the other way than it surprised are not followed: they cannot be what was behind it. */
function couldBe(story: Story, { quantity, z, sight }: Surprising): boolean {
  if (z < 1 || quantity === 'titration') return true
  const isMore = sight.read > sight.expected
  if (quantity === 'brix') return !(isMore ? weakens : strengthens).has(story)
  return !(isMore ? lowers : lifts).has(story)
}

const weakens: ReadonlySet<Story> = new Set(['unlogged-water'])
const strengthens: ReadonlySet<Story> = new Set(['unlogged-concentrate', 'unlogged-drawoff'])
const lowers: ReadonlySet<Story> = new Set(['unlogged-drawoff', 'unlogged-concentrate'])
const lifts: ReadonlySet<Story> = new Set([
  'unlogged-addition',
  'unlogged-water',
  'unlogged-concentrate',
  'unlogged-charge',
])

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

/** The figure is set aside: misread, or another sump's. */
function setAside(
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  { surprise, circumstances, most }: { surprise: Surprise; circumstances: Circumstances; most: Surprising },
): Branch {
  const told = copyBranch(branch)
  told.stories.push({ surprise: surprise.number, story: 'set-aside', volume: 0 })
  told.weight += takeAll(told, sump, reading, circumstances, most.quantity)
  const { misread, exchanged } = notThisSumps(most, reading.sump, circumstances.offset.others)
  surprise.otherSump = exchanged / (misread + exchanged)
  told.weight += Math.log((misread + exchanged) / (1 + 0.5 * doubtsLately(sump)))
  return told
}

/** What was poured last may have been another product than written. */
function wrongFluid(
  branch: Branch,
  sump: SumpState,
  reading: ReadingEvent,
  { surprise, circumstances }: { surprise: Surprise; circumstances: Circumstances },
): Branch[] {
  if (!sump.pouredSince) return []
  return [...reading.scales.keys()].flatMap((fluid) => {
    if (branch.fluids.every((one) => one.fluid === fluid || one.share < 0.5)) return []
    const told = copyBranch(branch)
    told.fluids = [{ fluid, share: 1 }]
    told.stories.push({ surprise: surprise.number, story: 'wrong-fluid', volume: 0 })
    told.weight += Math.log(0.001 / Math.max(1, reading.scales.size - 1))
    told.weight += takeAll(told, sump, reading, circumstances)
    return [told]
  })
}

function openSurprise(sump: SumpState, { id, at }: ReadingEvent, { quantity, sight, sd }: Surprising): Surprise {
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
  const least = most + Math.log(leastShare)
  let kept = 0
  while (kept < sorted.length && kept < mostBranches && sorted[kept]!.weight > least) kept++
  for (let i = kept; i < sorted.length; i++) dropBelief(sorted[i]!.belief)
  sorted.length = kept
  for (const branch of sorted) branch.weight -= most
  return sorted
}
