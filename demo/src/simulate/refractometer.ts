import type { FluidDocument } from '../book-document.ts'
import { firstAt, secondAt } from './straight-lines.ts'

/** °Brix that a clean mix of a fluid shows. */
export function brixOf({ brixChart, brixFactor }: FluidDocument, concentration: number): number {
  if (brixChart !== undefined) return firstAt(brixChart, concentration)
  return concentration / (brixFactor ?? 1)
}

/** Percent of a mix that shows so many °Brix. */
export function percentOf({ brixChart, brixFactor }: FluidDocument, brix: number): number {
  if (brixChart !== undefined) return secondAt(brixChart, brix)
  return brix * (brixFactor ?? 1)
}

/**
 * °Brix that dirt adds: some 0.3 for each percent of tramp oil up to 4 %, and 0.12 for each 1000 mg/L of salts, of
 * which hardness is taken to be half. From memory.
 */
export const biasOf = ({ trampOil, hardness }: { trampOil: number; hardness: number }): number =>
  0.3 * Math.min(4, trampOil) + 0.12 * ((2 * hardness) / 1000)
