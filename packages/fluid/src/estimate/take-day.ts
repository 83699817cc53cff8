import { alone } from './entries/round.ts'
import { roundsOf } from './entries/rounds.ts'
import { sumpOf, takeEvent } from './entries/take-event.ts'
import type { ShopEvent } from './events.ts'
import type { ShopEstimate } from './shop-estimate.ts'

/**
 * Takes one calendar day of a shop's records into its estimate, which is changed. Days come in rising order, days without
 * records may be left out. Readings of one round are looked at together first, since they share the instrument's error.
 *
 * @param events of that day, in the order of the journal: (at, rank, id)
 */
export function takeDay(shop: ShopEstimate, day: number, events: readonly ShopEvent[]): void {
  shop.firstDay ??= day
  const offsets = roundsOf(shop, events)
  for (const event of events) {
    const sump = sumpOf(shop, event)
    if (sump === null) continue
    const offset = event.kind === 'reading' ? (offsets.get(event.id) ?? alone(shop.priors)) : alone(shop.priors)
    takeEvent(shop, sump, event, offset)
  }
}
