/** A normal distribution of what differs from sump to sump. */
export interface Spread {
  mean: number
  sd: number
}

/** What sumps of one kind have in common. */
export interface GroupPriors {
  /** ln of the share of the mark that evaporates on a working day. */
  evaporation: Spread
  /** ln of the share of the mark that is carried off on a working day. */
  carryOff: Spread
}

/**
 * What is supposed of a shop before its sumps are known, and what a shop has taught: a record by itself, valid from
 * the day it was learnt on.
 */
export interface ShopPriors {
  /** 0 for what is published here; one more with each time of learning. */
  version: number
  /** From how much it was learnt. */
  from: { sumps: number; readings: number; days: number }
  /** By kind of sump; `default` for a kind that was not there. */
  groups: Record<string, GroupPriors>
  /** ln of the true strength of pours over the written one. */
  pours: Spread
  /** How far a sump is filled that is filled to the mark, as a share of it. */
  full: Spread
  /** Evaporation and carry-off of an idle day, as a share of a working day's. */
  idle: { evaporation: number; carryOff: number }
  /** How much more (or less) than published days differ and rates wander: a factor of their sds. */
  unrest: number
  /** A refractometer in the hand: sd = √(fixed² + (share × shown)²), °Brix. */
  brixNoise: { fixed: number; share: number }
  /** An eye on the level: sd as a share of the mark. */
  levelNoise: number
  /** Common error of one instrument in one round, °Brix. */
  roundOffset: number
}

/**
 * Common practice of the trade, no source: a machine loses one to three percent of its sump on a working day, mostly to
 * the air; a stopped machine a third of that, and carries nothing off; a hand refractometer is read to about 0.1 °Brix.
 */
export const publishedPriors: ShopPriors = {
  version: 0,
  from: { sumps: 0, readings: 0, days: 0 },
  groups: {
    default: { evaporation: { mean: Math.log(0.016), sd: 0.55 }, carryOff: { mean: Math.log(0.006), sd: 0.7 } },
  },
  pours: { mean: 0, sd: 0.06 },
  full: { mean: 1.01, sd: 0.065 },
  idle: { evaporation: 0.35, carryOff: 0.04 },
  unrest: 1,
  brixNoise: { fixed: 0.09, share: 0.012 },
  levelNoise: 0.025,
  roundOffset: 0.08,
}

export const groupOf = (priors: ShopPriors, group: string): GroupPriors =>
  priors.groups[group] ?? priors.groups.default!

/** How a sump's quantities wander: sds a root of a day, and sds of what a sump starts with. Common practice, no source. */
export const wander = {
  evaporation: 0.02,
  carryOff: 0.038,
  scale: 0.004,
  bias: 0.012,
  titration: 0.012,
  pours: 0.003,
  gauge: 0.0025,
  /** Of the hardness, as a share. */
  hardness: 0.0105,
  chloride: 0.008,
} as const

/** Tramp oil and dirt lift what a refractometer shows: °Brix a day; skimming takes off a part of it. Common practice, no source. */
export const oil = { aDay: 0.001, skimmed: 0.4, most: 0.6 } as const

/** How much one day differs from another of the same sump: sd of the day's losses as a share. */
export const dayByDay = { evaporation: 0.12, carryOff: 0.25 } as const

/** Working days that resemble each other: weather and orders last some days. */
export const spell = 3

/** Shares a day: concentrate used up, hardness above the level at which soaps hold it that drops out. */
export const chemistry = { depletion: 0.0007, scum: 0.002, scumAbove: 150 } as const

export const start = {
  /** Of ln s where a plate is known, and where the mark had to be guessed. */
  scaleSd: 0.17,
  guessedScaleSd: 0.35,
  fill: { mean: 0.93, sd: 0.1 },
  strengthSd: 2,
  biasFresh: { mean: 0.05, sd: 0.1 },
  biasUsed: { mean: 0.08, sd: 0.18 },
  titrationSd: 0.3,
  holdUp: { mean: 0.12, sd: 0.07 },
  gaugeSd: 0.025,
  gain: { mean: 0.3, sd: 0.42 },
  guessedGaugeSd: 0.08,
} as const

/** Doubt of what people write down of a pour. */
export const written = {
  /** Of a measured volume, as a share. */
  volume: 0.05,
  /** Of a strength, as a share, beside what all pours of a sump have in common. */
  strength: 0.05,
  /** Of a fill to the mark, as a share of the mark. */
  mark: 0.03,
  /** Of a water's hardness, as a share. */
  water: 0.1,
} as const

/** °Brix that a mg/L of hardness feigns, with the salts that come along with it (about 0.12 °Brix per 1000 mg/L of salts; from memory). */
export const brixPerHardness = 0.00018
