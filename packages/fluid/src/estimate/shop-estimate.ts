import { type Belief, copyBelief, newBelief } from '../filter/index.ts'
import type { EstimatedDoubt } from './answer-types.ts'
import type { Story } from './doubts/stories.ts'
import { noVisits, type Visits } from './doubts/visits.ts'
import type { ShopTime, SumpSpec, WorkCalendar } from './events.ts'
import { groupOf, type ShopPriors, start } from './priors.ts'
import {
  bias,
  carryOff,
  chloride,
  evaporation,
  fill,
  full,
  gain,
  gauge,
  hardness,
  holdUp,
  pours,
  scale,
  size,
  strength,
  titration,
} from './state.ts'
import type { Idle } from './work-calendar.ts'

/** One course of events that the records of a sump allow, with the belief it leads to. */
export interface Branch {
  belief: Belief
  /** Logarithm of its probability, up to a constant. */
  weight: number
  /** Each product's share of the concentrate. */
  fluids: { fluid: string; share: number }[]
  /** Which story each open surprise has here. */
  stories: { surprise: number; story: Story; volume: number }[]
}

/** A surprise whose story is not settled. */
export interface Surprise {
  number: number
  entry: string
  at: ShopTime
  found: EstimatedDoubt['found']
  /** Readings of the sump since. */
  readings: number
  /** Of the story that sets the reading aside: how likely it is another sump's figure rather than misread. */
  otherSump: number
}

/** All that is kept of one sump. */
export interface SumpState {
  spec: SumpSpec
  /** Litres at the full mark by the plate, or by guess. */
  plate: number
  /** The time up to which its branches have come. */
  at: ShopTime
  /** When the youngest record that moved it was made. */
  dataAt: ShopTime | null
  branches: Branch[]
  surprises: Surprise[]
  /** Doubts whose story no longer moves the estimate, or was told long ago. */
  doubts: EstimatedDoubt[]
  nextSurprise: number
  idles: Idle[]
  /** Running mean of what is poured here, percent; null before the first pour. */
  usualStrength: number | null
  /** Hardness and chloride of what is poured here. */
  usualWater: { hardness: number; chloride: number } | null
  lastReadingAt: ShopTime | null
  /** Common errors of rounds that were lately taken off this sump's readings: a running mean, °Brix. */
  takenOff: number
  /** How full it was believed to be at its last visit; null before the first. */
  lastFill: number | null
  /** By how full it was found: visits, and those after which a pour was written down. */
  visits: Visits
  /** Whether anything was charged or added since the last reading of strength. */
  pouredSince: boolean
  hours: { at: ShopTime; hours: number; perDay: number | null } | null
}

/** What is counted to learn from, over the whole shop. */
export interface Tally {
  readings: number
  /** Of readings that fitted: squares of surprises over their variance. */
  brix: { count: number; squares: number }
  level: { count: number; squares: number }
}

/** Where all sumps of a shop stand after some days of records. */
export interface ShopEstimate {
  calendar: WorkCalendar
  priors: ShopPriors
  sumps: Map<string, SumpState>
  tally: Tally
  /** Visits of all sumps. */
  visits: Visits
  firstDay: number | null
}

export const emptyTally = (): Tally => ({
  readings: 0,
  brix: { count: 0, squares: 0 },
  level: { count: 0, squares: 0 },
})

/** The mark that a sump without one is supposed to have: a brim is usually a quarter above it; else a middling machine's. */
export const guessedMark = (spec: SumpSpec): number =>
  spec.mark ?? (spec.capacity === null ? 200 : spec.capacity / 1.25)

/** A sump of which nothing was recorded yet. */
export function newSump(spec: SumpSpec, at: ShopTime, priors: ShopPriors): SumpState {
  return {
    spec,
    plate: guessedMark(spec),
    at,
    dataAt: null,
    branches: [
      { belief: firstBelief(spec, priors), weight: 0, fluids: [{ fluid: spec.fluid, share: 1 }], stories: [] },
    ],
    surprises: [],
    doubts: [],
    nextSurprise: 1,
    idles: [],
    usualStrength: null,
    usualWater: null,
    lastReadingAt: null,
    takenOff: 0,
    lastFill: null,
    visits: noVisits(),
    pouredSince: false,
    hours: null,
  }
}

function firstBelief(spec: SumpSpec, priors: ShopPriors): Belief {
  const belief = newBelief(size)
  const group = groupOf(priors, spec.group)
  const put = (i: number, mean: number, sd: number) => {
    belief.mean[i] = mean
    belief.cov[i * size + i] = sd ** 2
  }
  const plate = guessedMark(spec)
  put(fill, start.fill.mean, start.fill.sd)
  put(strength, spec.target ?? 7, start.strengthSd)
  put(hardness, 250, 180)
  put(chloride, 80, 80)
  put(evaporation, group.evaporation.mean, group.evaporation.sd)
  put(carryOff, group.carryOff.mean, group.carryOff.sd)
  put(scale, 0, spec.mark === null ? start.guessedScaleSd : start.scaleSd)
  put(bias, start.biasUsed.mean, start.biasUsed.sd)
  put(titration, 0, start.titrationSd)
  if (spec.holdUp === null) put(holdUp, start.holdUp.mean, start.holdUp.sd)
  else put(holdUp, spec.holdUp / plate, 0.02 + (0.25 * spec.holdUp) / plate)
  put(pours, priors.pours.mean, priors.pours.sd)
  put(full, priors.full.mean, priors.full.sd)
  put(gain, start.gain.mean, start.gain.sd)
  put(gauge, 0, spec.mark === null ? start.guessedGaugeSd : start.gaugeSd)
  return belief
}

/** The likeliest branch. */
export function bestBranch({ branches }: SumpState): Branch {
  let best = branches[0]!
  for (const branch of branches) if (branch.weight > best.weight) best = branch
  return best
}

/** Probabilities of the branches, in their order. */
export function probabilities(branches: readonly Branch[]): number[] {
  const most = Math.max(...branches.map(({ weight }) => weight))
  const shares = branches.map(({ weight }) => Math.exp(weight - most))
  const sum = shares.reduce((total, share) => total + share, 0)
  return shares.map((share) => share / sum)
}

/** A branch that may go on by itself. */
export const copyBranch = (branch: Branch): Branch => ({
  ...branch,
  belief: copyBelief(branch.belief),
  stories: [...branch.stories],
})

/** Litres of the whole system in a branch. */
export const litresOf = ({ belief: { mean } }: Branch, { plate }: SumpState): number =>
  mean[fill]! * Math.exp(mean[scale]!) * plate
