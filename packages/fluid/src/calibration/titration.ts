import { interval90 } from '../interval90.ts'
import type { Figure, Percent, Sd } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** A titration as a kit or a bench gives it. */
export interface Titration {
  /** Millilitres of reagent, or drops counted, until the colour turns. */
  amount: number
  /** Percent per millilitre (or drop), for the sample size the kit's sheet names. */
  factor: number
  /** What the shop's water alone takes; default 0. */
  blank?: number | undefined
  /** Sample taken over the sample the factor is for; 1 unless a larger or smaller sample was taken. */
  sampleShare?: number | undefined
  /** The smallest step of `amount`: 1 for drops, the division of a burette; default 1. */
  resolution?: number | undefined
  /** Of the factor, percent per millilitre or drop; default 0. */
  factorSd?: Sd | undefined
}

/**
 * The concentration by titration of what the concentrate brings (alkalinity, amines, anionics):
 *
 *     concentration = factor × (amount − blank) / sampleShare
 *
 * Its doubt after the GUM (JCGM 100:2008, 4.3.7 and 5.1.2): the end point lies anywhere within one step (sd resolution / √12), for
 * the blank as well where one was run; the factor adds its own. Not in the doubt: acid, alkali or biocide carried in, cleaner
 * left behind and pH boosters move a titration as oil moves a refractometer. Where the two differ, act on the lower.
 *
 * Source: DGUV Regel 109-003 (titration factor beside the refractometer factor; what falsifies each).
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example titratedConcentration({ amount: 8, factor: 0.9 }) // mean 7.2
 */
export function titratedConcentration(titration: Titration): Figure {
  const { amount, factor, blank = 0, sampleShare = 1, resolution = 1, factorSd = 0 } = titration
  requireRange('amount', amount, { min: 0 })
  requireRange('factor', factor, { above: 0 })
  requireRange('blank', blank, { min: 0 })
  requireRange('sampleShare', sampleShare, { above: 0 })
  requireRange('resolution', resolution, { min: 0 })
  requireRange('factorSd', factorSd, { min: 0 })
  const net = Math.max(0, amount - blank) / sampleShare
  const mean: Percent = factor * net
  const stepSd = ((resolution / Math.sqrt(12)) * (blank === 0 ? 1 : Math.SQRT2)) / sampleShare
  const sd = Math.hypot(factor * stepSd, factorSd * net)
  return { mean, sd, ...interval90(mean, sd, 0) }
}
