import type { Band, Litres, MgPerLitre, Percent, Sd } from '../quantities.ts'

/** A sump as it stands and what it should be. */
export interface SumpToPour {
  /** Fluid seen in the sump; the lines' share comes on top while the pumps run. 0 or more. */
  volume: Litres
  /** 0 to 100. */
  concentration: Percent
  /** Standard deviation of `concentration`. */
  concentrationSd?: Sd
  /** Standard deviation of `volume`. */
  volumeSd?: Sd
  /** Of the mix in the sump; null or missing where nobody read it. */
  hardness?: MgPerLitre | null
  /** At the normal full mark, pumps stopped. */
  fillVolume: Litres
  /** To the brim; without it 1.25 × `fillVolume`. */
  capacity?: Litres
  /** The pumps' suction: below it level comes first. */
  minVolume?: Litres
  pumps?: 'running' | 'stopped'
  /** Out in lines and conveyor while the pumps run. */
  holdUp?: Litres
  /** What is aimed at; from the leanest to the strongest mix that can be poured. */
  target: Percent
  /** Without a band every concentration counts as inside it. */
  band?: Band
  class?: 'soluble-oil' | 'semi-synthetic' | 'synthetic' | 'straight-oil'
  /** A record of this sump does not fit and nobody has settled it. */
  doubt?: boolean
}

/** What the shop can pour. */
export interface Pourable {
  /** The strongest mix that can be poured; default 20. */
  maxStrength?: Percent
  /** The leanest mix the fluid's sheet allows; default 0, plain water. */
  minStrength?: Percent
  waters?: readonly PourableWater[]
}

/** A water on hand. */
export interface PourableWater {
  id: string
  kind?: 'tap' | 'well' | 'softened' | 'reverse-osmosis' | 'deionised'
  hardness?: MgPerLitre
}

/** What to do with a sump. */
export type Action = 'top-up' | 'water-only' | 'draw-off' | 'change' | 'measure-first' | 'none' | 'refuse'

/** Why a recipe is what it is; sentences are made of these in `say/`. */
export type Reason =
  | 'straight-oil'
  | 'doubt'
  | 'interval-wider-than-band'
  | 'volume-too-uncertain'
  | 'level-unknown'
  | 'strength-unknown'
  | 'mark-unknown'
  | 'target-unknown'
  | 'factor-unknown'
  | 'below-suction'
  | 'lean'
  | 'rich'
  | 'in-band'
  | 'above-mark'
  | 'above-brim'
  | 'held-at-strongest'
  | 'held-at-leanest'
  | 'still-lean'
  | 'still-rich'
  | 'kept-below-brim'
  | 'neat-concentrate'
  | 'only-softened-water'

/** An amount of mix to pour, and what it is made of: `volume` = `concentrate` + `water`. */
export interface Pour {
  volume: Litres
  strength: Percent
  concentrate: Litres
  water: Litres
  /** Which water; empty where none was named. */
  waters: { id: string; volume: Litres }[]
  /** Of the mix poured: its water's, thinned by the concentrate; null where the water was not analysed. */
  hardness: MgPerLitre | null
}

/** Where a sump stands after the pour, with the central 90 % interval of its concentration. */
export interface Outcome {
  volume: Litres
  concentration: Percent
  low90: Percent
  high90: Percent
  /** Of the mix; null where that of the sump or of the pour is unknown. */
  hardness: MgPerLitre | null
}

/** Another thing that could be done, with what follows from it. */
export interface Alternative {
  action: Action
  add: Pour | null
  /** Litres taken out first. */
  drawOff: Litres
  result: Outcome
  because: Reason[]
}

/** The advice for one sump. */
export interface Recipe {
  action: Action
  /** What to pour; null where nothing is poured. */
  add: Pour | null
  /** Litres to take out first; 0 where nothing is taken out. */
  drawOff: Litres
  /** Null where nothing can be said before something is measured or settled. */
  result: Outcome | null
  alternatives: Alternative[]
  because: Reason[]
}
