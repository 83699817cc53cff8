import { canonicalJson } from '../journal/canonical.ts'
import { thingKinds } from '../schema/things/index.ts'
import type { StoredThing } from '../store/store.ts'

/** What is wrong with a thing of the shop by itself, as it first came in. */
export function thingFaults({ kind, id, body }: StoredThing): string[] {
  const faults = kind === 'shop' || kind in thingKinds ? [] : [`no kind of thing is called "${kind}"`]
  try {
    const thing = JSON.parse(body) as { id?: unknown }
    if (canonicalJson(thing) !== body) faults.push('its body is not in its canonical spelling')
    if (kind !== 'shop' && thing.id !== id) faults.push(`its body calls it ${JSON.stringify(thing.id)}`)
  } catch {
    faults.push('its body is not JSON')
  }
  return faults
}
