import type { DatedFactor } from '@sumpbook/fluid'
import { type KnownMix, type ProductFactor, productFactor } from '@sumpbook/fluid'
import type { Thing } from '../api/types.ts'
import { type Fault, readBrix, readStrength } from '../fields/read.ts'
import { isEmptyRow, type Row } from '../fields/rows.ts'
import { factorsOf } from './measured.ts'

export type MixRow = Row<'percent' | 'brix'>

export interface MixesRead {
  mixes: KnownMix[]
  faults: Partial<Record<'percent' | 'brix', Fault | string>>[]
}

/** Rows of known mixes, less what the instrument shows on plain water. A half-filled row is not yet a mix, and is no fault. */
export function readMixes(rows: readonly MixRow[], waterBrix: number): MixesRead {
  const mixes: KnownMix[] = []
  const faults = rows.map((row): MixesRead['faults'][number] => {
    if (isEmptyRow(row)) return {}
    const percent = readStrength(row.percent)
    const brix = readBrix(row.brix, { min: waterBrix, max: 95 })
    if (!('fault' in percent) && !('fault' in brix) && percent.value !== null && brix.value !== null) {
      mixes.push({ percent: percent.value, brix: brix.value - waterBrix })
    }
    return {
      ...('fault' in percent ? { percent: percent.fault } : {}),
      ...('fault' in brix ? { brix: brix.fault } : {}),
    }
  })
  return { mixes, faults }
}

/** The factor of mixes, or null where they are too few: one with concentrate through zero, else two different ones. */
export function factorFrom(mixes: readonly KnownMix[], throughZero: boolean): ProductFactor | null {
  const different = new Set(mixes.map(({ percent }) => percent).filter((percent) => !throughZero || percent > 0))
  return different.size < (throughZero ? 1 : 2) ? null : productFactor(mixes, { throughZero })
}

/** °Brix of each mix above or below the line. */
export const residualsOf = (
  mixes: readonly KnownMix[],
  { factor, intercept }: Pick<Extract<ProductFactor, { outcome: 'factor' }>, 'factor' | 'intercept'>,
): { percent: number; residual: number }[] =>
  mixes.map(({ percent, brix }) => ({ percent, residual: brix - intercept - percent / factor }))

/** A fluid's dated factors with one more; one of the same day gives way to it. */
export function withFactor(fluid: Thing, from: string, brixFactor: number): DatedFactor[] {
  const others = factorsOf(fluid).filter((factor) => factor.lot !== undefined || factor.from !== from)
  return [...others, { from, brixFactor: Number(brixFactor.toPrecision(5)) }]
}
