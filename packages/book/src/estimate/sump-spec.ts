import type { SumpSpec } from '@sumpbook/fluid'
import type { Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'

/** A sump as the estimator sees it. Its own limits win over its fluid's; without a target it is supposed to be kept at the middle of its band. */
export function specOf(sump: Sump, { fluid }: Things): SumpSpec {
  const of = fluid.get(sump.fluid)
  const { low, target, high } = { ...of?.limits?.concentration, ...sump.limits?.concentration }
  const middle = low !== undefined && high !== undefined ? (low + high) / 2 : null
  return {
    mark: sump.fillVolume ?? null,
    capacity: sump.capacity ?? null,
    minVolume: sump.minVolume ?? null,
    holdUp: sump.holdUp ?? null,
    group: sump.kind ?? 'stand-alone',
    fluid: sump.fluid,
    target: of?.class === 'straight-oil' ? null : (target ?? middle),
  }
}

const fields = ['mark', 'capacity', 'minVolume', 'holdUp', 'group', 'fluid', 'target'] as const

export const sameSpec = (a: SumpSpec, b: SumpSpec): boolean => fields.every((field) => a[field] === b[field])
