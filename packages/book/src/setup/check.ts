import type { Fault } from '../errors.ts'
import type { Setup } from '../schema/entries/index.ts'
import { faultsOf } from '../schema/faults.ts'
import { shop, type ThingKind, thingKinds } from '../schema/things/index.ts'
import { lay, settled } from './lay.ts'
import type { ThingHistory, Things } from './things.ts'

/**
 * The faults of a set-up entry: values that the thing, so changed, cannot have. A thing that is not there yet may be
 * told in parts, so a field that is missing is no fault, only one that is wrong.
 */
export function setupFaults({ about, changes }: Setup, history: ThingHistory): Fault[] {
  const { kind, id = 'shop' } = about
  if (kind !== 'shop' && !(kind in thingKinds)) return []
  const things = history.at()
  const before = thingOf(things, kind, id)
  const laid: Record<string, unknown> = { ...before }
  lay(laid, { ...changes, ...(kind === 'shop' ? {} : { id }) })
  const after = settled(laid)
  const parsed = (kind === 'shop' ? shop : thingKinds[kind as ThingKind].schema).safeParse(after)
  if (parsed.success) return []
  return faultsOf(parsed.error, after, '/changes').filter(({ found }) => before !== undefined || found !== 'nothing')
}

function thingOf(things: Things, kind: string, id: string): Record<string, unknown> | undefined {
  return kind === 'shop' ? things.shop : things[kind as ThingKind].get(id)
}
