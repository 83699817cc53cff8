import { type DoseLabel, type DoseUnit, perLitre } from '@sumpbook/fluid'
import type { Additive } from '../schema/things/additive.ts'

/** What a label allows, in millilitres or grams of product in a litre of mix; what nobody typed is null. */
export function labelOf({ dose, minimumDays, most }: Additive): { label: DoseLabel; unit: DoseUnit } {
  const each = (amount: number) => perLitre(amount, dose?.unit ?? 'mL/L').amount
  return {
    unit: perLitre(0, dose?.unit ?? 'mL/L').unit,
    label: {
      low: dose === undefined ? null : each(dose.low),
      high: dose === undefined ? null : each(dose.high),
      minimumDays: minimumDays ?? null,
      // Without the unit of a dose nobody can say what the most is of.
      most: most === undefined || dose === undefined ? null : { amount: each(most.amount), days: most.days },
    },
  }
}

/** Whether nitrite and amines would come together. An unknown fluid may have amines, as most have. */
export function isNitriteWithAmines(additive: Additive, contents: readonly string[] | undefined): boolean {
  const brings = (what: string) => additive.contains?.some((one) => sameWord(one, what)) === true
  const has = (what: string) => contents?.some((one) => sameWord(one, what)) === true
  return (
    (brings('nitrite') && (contents === undefined || has('amines') || brings('amines'))) ||
    (brings('amines') && has('nitrite'))
  )
}

const sameWord = (a: string, b: string) => a.trim().toLowerCase() === b
