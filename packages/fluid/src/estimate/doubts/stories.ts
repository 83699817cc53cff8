import { type Belief, blur, renew } from '../../filter/index.ts'
import { takeBack } from '../flow.ts'
import { type Pour, pourShare, pourUpTo, takeOut } from '../pour.ts'
import type { ShopPriors } from '../priors.ts'
import { bias, carryOff, evaporation, fill, gauge, strength } from '../state.ts'

/**
 * What may be behind a surprising reading. `stands`: nothing is wrong, chance or another job; `set-aside`: the figure
 * is not this sump's (misread, or another sump's); the others are what nobody wrote down.
 */
export type Story =
  | 'stands'
  | 'set-aside'
  | 'wrong-fluid'
  | 'unlogged-addition'
  | 'unlogged-water'
  | 'unlogged-concentrate'
  | 'unlogged-drawoff'
  | 'unlogged-charge'

/** A story as it may have gone: how often it happens, and what it does to a belief. */
export interface Telling {
  story: Story
  /** Probability beforehand, for one reading a week after the last. */
  prior: number
  /** Whether it may happen at any time between two readings, so that more time makes it likelier. */
  overTime: boolean
  apply?: (belief: Belief) => void
}

/** What the stories of a sump need to know of it. */
export interface Habits {
  /** What is usually poured: as written, with its water. */
  usual: Pour
  /** What the sump is filled to, percent. */
  target: number
  /** How far above the mark fluid can stand, as a share of the mark. */
  brim: number
  plainWater: Pour
  /** Probability that a pour at the last visit was not written down, from how full the sump was then. */
  forgotten: number
  /** Days of work reckoned since the last reading, and what goes on at rest. */
  workSince: number
  idle: ShopPriors['idle']
}

/**
 * The stories of one surprise, with how often they happen at all (common practice, no source): of a hundred readings one
 * or two are wrong, of a hundred pours one or two are forgotten.
 */
export function tellings(
  { usual, target, brim, plainWater, forgotten, workSince, idle }: Habits,
  fillBefore: number,
): Telling[] {
  const missing = Math.max(0.04, 1 - fillBefore)
  const room = Math.max(0.06, Math.min(0.3, brim - fillBefore))
  const neat: Pour = {
    ...usual,
    strength: 100,
    strengthSd: 0,
    mixed: false,
    hardness: 0,
    hardnessSd: 0,
    chloride: 0,
    chlorideSd: 0,
  }
  const varied: Pour = { ...usual, strengthSd: 2.2 }
  return [
    {
      story: 'unlogged-addition',
      prior: Math.max(0.03, forgotten),
      overTime: false,
      apply: (belief) => pourUpTo(belief, 0.04, { ...usual, strengthSd: 1.5 }),
    },
    {
      story: 'unlogged-addition',
      prior: 0.019,
      overTime: true,
      apply: (belief) => pourShare(belief, 0.6 * room, 0.35 * room, varied, false),
    },
    {
      story: 'unlogged-water',
      prior: 0.019,
      overTime: true,
      apply: (belief) => pourShare(belief, Math.max(missing, 0.12), 0.08, plainWater, false),
    },
    {
      story: 'unlogged-concentrate',
      prior: 0.007,
      overTime: true,
      apply: (belief) => pourShare(belief, 0.018, 0.01, neat, false),
    },
    {
      story: 'unlogged-drawoff',
      prior: 0.01,
      overTime: true,
      apply: (belief) => takeOut(belief, 0.18, 0.08),
    },
    {
      story: 'unlogged-charge',
      prior: 0.0007,
      overTime: true,
      apply: (belief) => {
        renew(belief, fill, 1, 0.07 ** 2)
        renew(belief, strength, target, 1)
        renew(belief, bias, 0.05, 0.12 ** 2)
      },
    },
    // Nobody wrote that the machine stood.
    {
      story: 'stands',
      prior: 0.004,
      overTime: false,
      apply: (belief) => takeBack(belief, 0.75 * workSince, idle),
    },
    // Another job, a hot week, oil in the sample: nothing to ask about.
    {
      story: 'stands',
      prior: 0.02,
      overTime: false,
      apply: (belief) => {
        blurRates(belief)
        blur(belief, bias, 0.2 ** 2)
      },
    },
  ]
}

/** Another job or season: the rates may be others than they were; what they did since the last record cannot be told apart. */
function blurRates(belief: Belief): void {
  blur(belief, evaporation, 0.15 ** 2)
  blur(belief, carryOff, 0.5 ** 2)
  blur(belief, strength, (0.04 * belief.mean[strength]!) ** 2)
  blur(belief, fill, 0.02 ** 2)
  blur(belief, gauge, 0.04 ** 2)
}
