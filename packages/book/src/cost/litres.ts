import type { Litres } from './answer-types.ts'
import type { PourLine } from './pours.ts'

export function litresOf(pours: readonly PourLine[]): Litres {
  const of = (measure: PourLine['measure'], what: 'mix' | 'concentrate' | 'waterLitres') =>
    sum(pours.filter((pour) => pour.measure === measure).map((pour) => pour[what] ?? 0))
  return {
    mix: of('recorded', 'mix'),
    concentrate: of('recorded', 'concentrate'),
    water: of('recorded', 'waterLitres'),
    byLevel: {
      mix: of('by-level', 'mix'),
      concentrate: of('by-level', 'concentrate'),
      water: of('by-level', 'waterLitres'),
      fills: pours.filter(({ measure }) => measure === 'by-level').length,
    },
    unmeasured: pours.filter(({ measure }) => measure === 'unmeasured').length,
    withoutStrength: sum(pours.filter(({ concentrate }) => concentrate === null).map(({ mix }) => mix ?? 0)),
  }
}

/** A sum that does not depend on the order to more digits than anybody reads: to the billionth of a litre. */
export const sum = (values: readonly number[]): number =>
  Number(values.reduce((total, value) => total + value, 0).toFixed(9))
