import { type Belief, spread } from './matrix-filter.ts'
import type { DayShare } from './work-days.ts'

/** The six states, in their order: litres, litres of concentrate, mg, log L a running day twice, °Brix. */
export const V = 0
export const M = 1
export const N = 2
export const lnE = 3
export const lnD = 4
export const B = 5

export const row = (...entries: [number, number][]): number[] => {
  const slope = [0, 0, 0, 0, 0, 0]
  for (const [place, value] of entries) slope[place] = value
  return slope
}

export const diagonal = (variances: readonly number[]): number[][] =>
  variances.map((variance, i) => variances.map((_, j) => (i === j ? variance : 0)))

/** Shares of the volume that a sump loses in a running day, at the start, with the sd of their logarithms. */
const usual = { evaporation: 0.016, evaporationLogSd: 0.6, carryOff: 0.006, carryOffLogSd: 0.8 }

/** A sump of which nothing is known but its mark. */
export function wideBelief(mark: number, target: number): Belief {
  const volume = 0.92 * mark
  const mean = [
    volume,
    (volume * target) / 100,
    volume * 250,
    Math.log(usual.evaporation * mark),
    Math.log(usual.carryOff * mark),
    0.1,
  ]
  const sds = [0.15 * mark, volume * 0.025, volume * 200, usual.evaporationLogSd, usual.carryOffLogSd, 0.25]
  const cov = diagonal(sds.map((sd) => sd * sd))
  // A sump that holds more holds more of everything.
  const along = [1, target / 100, 250]
  for (const i of [V, M, N]) {
    for (const j of [V, M, N]) if (i !== V || j !== V) cov[i]![j]! += along[i]! * along[j]! * sds[V]! ** 2
  }
  return { mean, cov }
}

/** Litres lost, if somebody knows them. */
export interface KnownLosses {
  evaporated: number
  carried: number
}

/** At most a day goes by, with the losses of its kind of day, or with those that are known. */
export function letDaysPass(belief: Belief, days: number, share: DayShare, known: KnownLosses | null): void {
  const [volume, concentrate, minerals] = belief.mean as [number, number, number]
  // No day takes more than a fifth of what is there, twice over.
  const most = 0.2 * volume * days
  const evaporated = Math.min(known?.evaporated ?? Math.exp(belief.mean[lnE]!) * share.evaporation * days, most)
  const carried = Math.min(known?.carried ?? Math.exp(belief.mean[lnD]!) * share.carryOff * days, most)
  const moved = known === null ? 1 : 0
  const depletion = 0.001 * days
  const part = carried / volume
  belief.mean[V] = volume - evaporated - carried
  belief.mean[M] = concentrate * (1 - part - depletion)
  belief.mean[N] = minerals * (1 - part)
  const jacobian = [
    row([V, 1], [lnE, -evaporated * moved], [lnD, -carried * moved]),
    row([M, 1 - part - depletion], [V, (concentrate * part) / volume], [lnD, -concentrate * part * moved]),
    row([N, 1 - part], [V, (minerals * part) / volume], [lnD, -minerals * part * moved]),
    row([lnE, 1]),
    row([lnD, 1]),
    row([B, 1]),
  ]
  const ofDay = known === null ? 0.25 : 0.02
  spread(belief, jacobian, [
    (ofDay * evaporated) ** 2 + (ofDay * carried) ** 2,
    (ofDay * part * concentrate) ** 2 + (0.002 * concentrate) ** 2 * days,
    (ofDay * part * minerals) ** 2 + (0.006 * minerals) ** 2 * days,
    0.03 ** 2 * days * moved,
    0.05 ** 2 * days * moved,
    0.012 ** 2 * days,
  ])
}

/** What is poured, as it is believed: litres, percent, mg/L, each with its sd. */
export interface BelievedPour {
  volume: number
  volumeSd: number
  strength: number
  strengthSd: number
  hardness: number
}

export function pourInto(belief: Belief, { volume, volumeSd, strength, strengthSd, hardness }: BelievedPour): void {
  const along = [1, strength / 100, (1 - strength / 100) * hardness]
  const across = [0, volume / 100, (-volume / 100) * hardness]
  for (const i of [V, M, N]) {
    belief.mean[i]! += volume * along[i]!
    for (const j of [V, M, N]) {
      belief.cov[i]![j]! += along[i]! * along[j]! * volumeSd ** 2 + across[i]! * across[j]! * strengthSd ** 2
    }
  }
  belief.cov[N]![N]! += (0.08 * hardness * volume) ** 2
}

/** Takes litres away at the sump's own composition. */
export function takeOut(belief: Belief, volume: number, volumeSd: number): void {
  const [whole, concentrate, minerals] = belief.mean as [number, number, number]
  const part = Math.min(volume / whole, 0.95)
  const jacobian = [
    row([V, 1]),
    row([M, 1 - part], [V, (concentrate * part) / whole]),
    row([N, 1 - part], [V, (minerals * part) / whole]),
    row([lnE, 1]),
    row([lnD, 1]),
    row([B, 1]),
  ]
  belief.mean[V] = whole * (1 - part)
  belief.mean[M] = concentrate * (1 - part)
  belief.mean[N] = minerals * (1 - part)
  const share = volumeSd / whole
  spread(belief, jacobian, [volumeSd ** 2, (share * concentrate) ** 2, (share * minerals) ** 2, 0, 0, 0])
}
