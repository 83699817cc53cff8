import type { Thing } from '../api/types.ts'
import { inWalkingOrder } from '../standing/walking-order.ts'
import type { Texts } from './thing-field.ts'

/**
 * What a new sump's form begins with, from the sumps that are there: the fluid of the one before, and the place behind it on the round. A band of
 * its own is not among it: without one, the fluid's holds.
 */
export function nextSump(sumps: readonly Thing[], fluids: readonly Thing[]): { fluid: string; texts: Texts } {
  const before = sumps.toSorted((a, b) => inWalkingOrder(stopOf(a), stopOf(b))).at(-1)
  const fluid = fluids.find(({ id }) => id === before?.fluid) ?? (fluids.length === 1 ? fluids[0] : undefined)
  const texts: Texts = typeof before?.order === 'number' ? { order: String(Math.floor(before.order) + 1) } : {}
  return { fluid: fluid?.id ?? '', texts }
}

const stopOf = ({ name, order }: Thing) => ({ name: String(name), order: typeof order === 'number' ? order : null })
