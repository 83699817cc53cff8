import { dropBelief, mergeBeliefs } from '../../filter/index.ts'
import { type Branch, copyBranch, type SumpState, type Surprise } from '../shop-estimate.ts'
import { doubtOf } from './doubt.ts'
import { storiesOf } from './stories-of.ts'

/** A surprise is settled by three more readings, a month, or when one story is left; then its branches become one. */
export function settle(sump: SumpState): void {
  while (sump.surprises.length > 0) {
    const surprise = sump.surprises.find((one) => isSettled(one, sump))
    if (surprise === undefined) return
    close(sump, surprise)
  }
}

function isSettled(surprise: Surprise, sump: SumpState): boolean {
  if (surprise.readings >= 3 || sump.at - surprise.at > 35) return true
  if (sump.surprises.length > 3 && sump.surprises[0] === surprise) return true
  const { story, probability } = storiesOf(sump, surprise)[0]!
  return probability > 0.94 && (surprise.readings >= 1 || story === 'stands')
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
  for (const { belief } of branches) dropBelief(belief)
  joined.weight = most + Math.log(shares.reduce((sum, share) => sum + share, 0))
  return joined
}
