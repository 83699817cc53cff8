import type { Litres, Percent } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** A vessel that is drained and rinsed several times; each drain leaves the same remainder behind. */
export interface Rinse {
  /** What stays in lines, conveyor and corners at each drain, above 0. */
  heldBack: Litres
  /** Clean water (or weak fluid's water) added to what is held back, each time. */
  rinseVolume: Litres
  /** A whole number, 0 or more. */
  rinses: number
  /** Of the old fluid, or of anything carried in it, before the first rinse. */
  concentration: Percent
}

export interface RinseResult {
  /** Share of the old fluid's strength that is left, 0 to 1. */
  residualFraction: number
  /** What is left, in the unit of `concentration`. */
  residual: Percent
}

/**
 * What is left after batch rinses, each mixed through and drained down to the same remainder:
 *
 *     residualFraction = (heldBack / (heldBack + rinseVolume)) ^ rinses
 *
 * `rinseVolume` is what is **added**. Filled up to 200 L with 10 L held back it is 190 L and each rinse leaves a twentieth; with 200 L added, 1/21.
 * Dirt that sits on walls and in dead corners gives way more slowly than this: accept a cleanout on pH, look, smell and a slide.
 *
 * Source: plain mass balance.
 *
 * @throws {RangeError} a quantity outside the range its field gives, a count of rinses that is not whole
 * @example rinse({ heldBack: 10, rinseVolume: 190, rinses: 2, concentration: 8 }) // { residualFraction: 0.0025, residual: 0.02 }
 */
export function rinse({ heldBack, rinseVolume, rinses, concentration }: Rinse): RinseResult {
  requireRange('heldBack', heldBack, { above: 0 })
  requireRange('rinseVolume', rinseVolume, { min: 0 })
  requireRange('concentration', concentration, { min: 0, max: 100 })
  requireWhole('rinses', rinses, 0)
  const residualFraction = (heldBack / (heldBack + rinseVolume)) ** rinses
  return { residualFraction, residual: concentration * residualFraction }
}

/** A vessel flushed with clean water that runs in and out all the time. */
export interface Flush {
  /** Of the vessel, above 0. */
  volume: Litres
  /** Litres that have run through, in and out. */
  flushed: Litres
}

/**
 * The share of the old fluid left in a well-mixed vessel after water has run through it:
 *
 *     fraction = exp(−flushed / volume)        flushed = flow × time
 *
 * One vessel's volume of water leaves 36.8 %; the same water used in batches leaves less.
 *
 * Source: plain mass balance of a stirred tank.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example flushedFraction({ volume: 200, flushed: 600 }) // 0.0498
 */
export function flushedFraction({ volume, flushed }: Flush): number {
  requireRange('volume', volume, { above: 0 })
  requireRange('flushed', flushed, { min: 0 })
  return Math.exp(-flushed / volume)
}

/** Running rinse tanks, the water flowing against the work. */
export interface CounterFlow {
  /** Litres of clean water for each litre of fluid dragged in, 0 or more. */
  ratio: number
  /** Tanks in a row, 1 or more. */
  tanks: number
}

/**
 * How many times weaker than what is dragged in the last tank of a running counter-flow rinse becomes:
 *
 *     dilution = 1 + r + r² + … + r^tanks = (r^(tanks + 1) − 1) / (r − 1)
 *
 * A single running tank gives r + 1.
 *
 * Source: plain mass balance; US EPA 625/8-82-008 (1982), formula from memory.
 *
 * @throws {RangeError} a quantity outside the range its field gives, a count of tanks that is not whole
 * @example counterFlowDilution({ ratio: 10, tanks: 2 }) // 111
 */
export function counterFlowDilution({ ratio, tanks }: CounterFlow): number {
  requireRange('ratio', ratio, { min: 0 })
  requireWhole('tanks', tanks, 1)
  let dilution = 1
  for (let tank = 0; tank < tanks; tank += 1) dilution = 1 + ratio * dilution
  return dilution
}

function requireWhole(name: string, value: number, min: number): void {
  requireRange(name, value, { min, max: 1000 })
  if (!Number.isInteger(value)) throw new OutOfRange(name, value, 'a whole number')
}
