import { erf } from './crps.ts'

/** What was said of a figure, and what came. */
export interface Foretold {
  figure: { mean: number; sd: number; low90: number; high90: number }
  came: number
}

/** Whether what was said to happen so often did. */
export interface Calibration {
  /** Shares that central intervals of the normal of mean and sd held, by their level in percent. */
  held: Record<'50' | '80' | '90' | '95', number>
  /** Shares under and over the interval that was given: 5 % each where it is honest on both sides. */
  under: number
  over: number
  /**
   * Shares of the cases by the place of what came in the normal of mean and sd, in tenths from its lower end (probability integral
   * transform): a tenth in each where it is honest, more at both ends where it is too narrow, less where too wide.
   *
   * Source: A. P. Dawid, JRSS A 147 (1984) 278; T. Gneiting, F. Balabdaoui, A. Raftery, JRSS B 69 (2007) 243.
   */
  tenths: number[]
}

/** Quantiles of the standard normal at 75, 90, 95 and 97.5 %: half the width of central intervals, in sds. */
const halfWidths = {
  '50': 0.6744897501960817,
  '80': 1.2815515655446004,
  '90': 1.6448536269514722,
  '95': 1.959963984540054,
}

export function calibrationOf(cases: readonly Foretold[]): Calibration {
  const share = (holds: (one: Foretold) => boolean) => cases.filter(holds).length / cases.length
  const z = ({ figure: { mean, sd }, came }: Foretold) => (came - mean) / sd
  const within = (width: number) => share((one) => Math.abs(z(one)) <= width)
  const tenthOf = (one: Foretold) => Math.min(9, Math.floor(5 * (1 + erf(z(one) / Math.SQRT2))))
  const { '50': half, '80': most, '90': nine, '95': nearly } = halfWidths
  return {
    held: { '50': within(half), '80': within(most), '90': within(nine), '95': within(nearly) },
    under: share(({ figure, came }) => came < figure.low90),
    over: share(({ figure, came }) => came > figure.high90),
    tenths: Array.from({ length: 10 }, (_, tenth) => share((one) => tenthOf(one) === tenth)),
  }
}
