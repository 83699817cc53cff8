/** A value on the nearest mark of a scale, without the dust of binary fractions. */
export function toStep(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(4))
}

/** A number as typed in the shop, with a decimal comma. */
export const typedNumber = (value: number): string => String(value).replace('.', ',')
