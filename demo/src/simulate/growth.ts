/** How bacteria fare in an hour. */
export interface Living {
  /** Percent of concentrate, and the percent it should be. */
  concentration: number
  target: number
  /** °C. */
  temperature: number
  running: boolean
  /** Percent of tramp oil. */
  trampOil: number
}

/** log10 CFU/mL of a sump that nobody lets go, and of one that has turned. */
const least = 2
const most = 7.5

/**
 * log10 CFU/mL an hour later. Growth goes faster where it is weak, warm, at rest and under oil; fluid at its target
 * and in motion holds growth back. The rates are common practice put into figures: a rested, weak sump turns within
 * a fortnight, a kept one drifts about 10³ to 10⁴.
 */
export function growthAfter(bacteria: number, hours: number, life: Living): number {
  const weakness = Math.max(0, 1 - life.concentration / life.target)
  const warmth = (life.temperature - 20) / 10
  const perDay = -0.05 + 0.35 * weakness + 0.03 * warmth + (life.running ? 0 : 0.05) + 0.02 * Math.min(3, life.trampOil)
  return Math.min(most, Math.max(least, bacteria + (perDay * hours) / 24))
}

/** pH of fluid: it falls below that of a fresh fill where it is weak and where bacteria live. */
export function phOf({ concentration, target, bacteria }: { concentration: number; target: number; bacteria: number }) {
  const strong = Math.min(1.4, Math.max(0.3, concentration / target))
  return 9.25 + 0.35 * Math.log(strong) - 0.16 * Math.max(0, bacteria - 3)
}
