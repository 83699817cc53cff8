import type { Days, Litres, LitresPerDay, MgPerLitre, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { after, type Course, dayAt, ratio, steady } from './course.ts'

/** A sump that is topped up all the time, so that its volume stays. Rates are litres a day of one and the same kind of day. */
export interface SteadySump {
  /** All the fluid of the system, above 0. */
  volume: Litres
  /** Water that leaves as vapour. */
  evaporation: LitresPerDay
  /** Fluid that leaves with chips, parts, mist and leaks, at the sump's own composition. */
  carryOff: LitresPerDay
  /** At the start. */
  concentration: Percent
  target: Percent
  /** Of the mix at the start. */
  hardness: MgPerLitre
  /** Of the water the top-up is made with. */
  waterHardness: MgPerLitre
  /** Of the top-up; without it the strength that holds the target. */
  strength?: Percent | undefined
  /** Share of the concentrate used up a day, 0.01 for 1 %; default 0. */
  depletion?: number | undefined
  /** Days to report, each from 0 on. */
  days: readonly Days[]
  /** Of the mix, the most that is wanted. */
  hardnessLimit?: MgPerLitre | undefined
}

export interface SumpBalance {
  /** The strength that holds the target; null where nothing is topped up or no mix up to neat concentrate holds it. */
  topUpStrength: Percent | null
  /** The strength reckoned with. */
  strength: Percent
  /** How many times richer in minerals than its top-up the sump becomes; null without carry-off, when there is no end to it. */
  cycles: number | null
  /** What the hardness approaches and never quite reaches; null without carry-off. */
  hardnessSteady: MgPerLitre | null
  /** What the concentration approaches; null where nothing takes concentrate away. */
  concentrationSteady: Percent | null
  series: { day: Days; concentration: Percent; hardness: MgPerLitre }[]
  /** When the hardness is first at the limit, 0 if it is from the start; null if never, or without a limit. */
  dayAtLimit: Days | null
}

/**
 * Concentrate and minerals of a sump topped up continuously with a mix of strength x made from water of hardness h.
 * Evaporation E takes water alone; carry-off D takes fluid as it is; k is the depletion:
 *
 *     volume · dC/dt = (E + D) · x − D · C − k · volume · C
 *     volume · dN/dt = (E + D) · (1 − x/100) · h − D · N
 *
 * Both are solved exactly. From them: the strength that holds the target, target · (D + k · volume) / (E + D); cycles
 * (E + D) / D; hardness at balance (1 − x/100) · h · cycles, approached with the time constant volume / D.
 * Without carry-off the minerals grow along a straight line for ever.
 *
 * Where the concentration would pass 100 % these rates cannot last: no water is left to evaporate. It is not cut off.
 *
 * Topping up once a week instead of all the time lags behind by about half a week's growth. Real minerals are not quite
 * conserved: soaps drop out as scum, some chips add hardness.
 *
 * Source: plain mass balance.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example balance({ volume: 200, evaporation: 6, carryOff: 2, concentration: 0, target: 0, hardness: 200, waterHardness: 200, strength: 0, days: [30] }).series[0].hardness // 355.5
 */
export function balance(sump: SteadySump): SumpBalance {
  requireSump(sump)
  const { volume, evaporation, carryOff, target, hardness, waterHardness, depletion = 0, hardnessLimit } = sump
  const poured = evaporation + carryOff
  const holding = poured === 0 ? null : (target * (carryOff + depletion * volume)) / poured
  const topUpStrength = holding !== null && holding <= 100 ? holding : null
  const strength = sump.strength ?? Math.min(holding ?? 0, 100)

  const concentrate: Course = {
    start: sump.concentration,
    gain: (poured * strength) / volume,
    loss: carryOff / volume + depletion,
  }
  const minerals: Course = {
    start: hardness,
    gain: (poured * (1 - strength / 100) * waterHardness) / volume,
    loss: carryOff / volume,
  }
  return {
    topUpStrength,
    strength,
    cycles: ratio(poured, carryOff),
    hardnessSteady: steady(minerals),
    concentrationSteady: steady(concentrate),
    series: sump.days.map((day) => ({ day, concentration: after(concentrate, day), hardness: after(minerals, day) })),
    dayAtLimit: hardnessLimit === undefined ? null : dayAt(minerals, hardnessLimit),
  }
}

function requireSump(sump: SteadySump): void {
  requireRange('volume', sump.volume, { above: 0 })
  requireRange('evaporation', sump.evaporation, { min: 0 })
  requireRange('carryOff', sump.carryOff, { min: 0 })
  requireRange('concentration', sump.concentration, { min: 0, max: 100 })
  requireRange('target', sump.target, { min: 0, max: 100 })
  requireRange('hardness', sump.hardness, { min: 0 })
  requireRange('waterHardness', sump.waterHardness, { min: 0 })
  requireRange('strength', sump.strength ?? 0, { min: 0, max: 100 })
  requireRange('depletion', sump.depletion ?? 0, { min: 0 })
  requireRange('hardnessLimit', sump.hardnessLimit ?? 0, { min: 0 })
  for (const [index, day] of sump.days.entries()) requireRange(`days.${index}`, day, { min: 0 })
}
