/** Why fluid entered or left a sump. */
export type FlowKind =
  | 'at-start'
  | 'poured'
  | 'moved-in'
  | 'evaporated'
  | 'carried-off'
  | 'depleted'
  | 'leaked'
  | 'drawn-off'
  | 'moved-out'

/** What entered (above 0) or left (below 0) for one reason on one day. */
export interface Flow {
  day: number
  kind: FlowKind
  /** Litres. */
  volume: number
  /** Litres of concentrate. */
  concentrate: number
  /** Milligrams as CaCO3. */
  hardness: number
}

/** The true content of a sump, lines included, and how it came to it. */
export interface SumpTruth {
  /** Litres. */
  volume: number
  /** Litres of concentrate. */
  concentrate: number
  /** Milligrams as CaCO3. */
  hardness: number
  /** Litres of tramp oil; floats beside the balance. */
  trampOil: number
  /** log10 CFU/mL. */
  bacteria: number
  /** One a day and kind, in order. */
  flows: Flow[]
}

/** Fluid on its way in: litres, percent, and mg/L of the mix. */
export interface Inflow {
  volume: number
  strength: number
  hardness: number
}

export function emptySump(): SumpTruth {
  return { volume: 0, concentrate: 0, hardness: 0, trampOil: 0, bacteria: 2, flows: [] }
}

/** Percent. */
export const concentrationOf = ({ volume, concentrate }: SumpTruth): number =>
  volume > 0 ? (100 * concentrate) / volume : 0
/** mg/L of mix. */
export const hardnessOf = ({ volume, hardness }: SumpTruth): number => (volume > 0 ? hardness / volume : 0)
/** Percent. */
export const trampOilOf = ({ volume, trampOil }: SumpTruth): number => (volume > 0 ? (100 * trampOil) / volume : 0)

/** Fluid comes in. Minerals come with the water's share alone: give the hardness of the mix. */
export function takeIn(sump: SumpTruth, day: number, kind: FlowKind, { volume, strength, hardness }: Inflow): void {
  flow(sump, { day, kind, volume, concentrate: (volume * strength) / 100, hardness: volume * hardness })
}

/** Fluid leaves as it is; never more than there is. Gives what left. */
export function takeOut(sump: SumpTruth, day: number, kind: FlowKind, litres: number): Inflow {
  const volume = Math.min(litres, sump.volume)
  if (volume <= 0) return { volume: 0, strength: 0, hardness: 0 }
  const gone = { volume, strength: concentrationOf(sump), hardness: hardnessOf(sump) }
  const share = volume / sump.volume
  const all = volume === sump.volume
  flow(sump, {
    day,
    kind,
    volume: -volume,
    concentrate: all ? -sump.concentrate : -sump.concentrate * share,
    hardness: all ? -sump.hardness : -sump.hardness * share,
  })
  sump.trampOil *= 1 - share
  return gone
}

/** Water leaves alone; concentrate and minerals stay behind. */
export function evaporate(sump: SumpTruth, day: number, litres: number): void {
  flow(sump, { day, kind: 'evaporated', volume: -Math.min(litres, sump.volume), concentrate: 0, hardness: 0 })
}

/** Concentrate is used up and soap drops out with some of the hardness; the volume stays. */
export function deplete(sump: SumpTruth, day: number, shares: { concentrate: number; hardness: number }): void {
  flow(sump, {
    day,
    kind: 'depleted',
    volume: 0,
    concentrate: -sump.concentrate * shares.concentrate,
    hardness: -sump.hardness * shares.hardness,
  })
}

function flow(sump: SumpTruth, { day, kind, volume, concentrate, hardness }: Flow): void {
  sump.volume += volume
  sump.concentrate += concentrate
  sump.hardness += hardness
  const today = flowOf(sump, day, kind)
  today.volume += volume
  today.concentrate += concentrate
  today.hardness += hardness
}

function flowOf({ flows }: SumpTruth, day: number, kind: FlowKind): Flow {
  for (let i = flows.length - 1; i >= 0 && flows[i]!.day === day; i--) {
    if (flows[i]!.kind === kind) return flows[i]!
  }
  const fresh = { day, kind, volume: 0, concentrate: 0, hardness: 0 }
  flows.push(fresh)
  return fresh
}
