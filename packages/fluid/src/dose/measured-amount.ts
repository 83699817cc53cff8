import type { DoseUnit } from './per-litre.ts'

/** In whose units somebody measures out. */
export type MeasuredIn = 'metric' | 'us' | 'imperial'

/** Millilitres of a US fluid ounce (1/128 of 3.785411784 L) and of an imperial one (1/160 of 4.54609 L); grams of an ounce. */
const usFlOz = 3785.411784 / 128
const imperialFlOz = 4546.09 / 160
const ounce = 28.349523125

/** What a small amount is measured in: its word, and how many millilitres or grams one of it is. */
export function measuredUnit(unit: DoseUnit, units: MeasuredIn): { word: string; size: number } {
  if (units === 'metric') return { word: unit, size: 1 }
  if (unit === 'g') return { word: 'oz', size: ounce }
  return { word: 'fl oz', size: units === 'us' ? usFlOz : imperialFlOz }
}

/**
 * Whether an amount lies within a dose: over its most it is more than the label allows, under its least it is no dose of the label.
 *
 * @example doseFault(450, { least: 200, most: 400 }) // 'over'
 */
export function doseFault(amount: number, { least, most }: { least: number; most: number }): 'over' | 'under' | null {
  const tiny = 1e-9
  if (amount > most * (1 + tiny)) return 'over'
  return amount < least * (1 - tiny) ? 'under' : null
}
