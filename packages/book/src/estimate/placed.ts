import type { ShopTime } from '@sumpbook/fluid'
import { rankOf } from '../journal/order.ts'
import type { Entry } from '../schema/entries/index.ts'
import type { ShopClock } from './shop-clock.ts'

/** A standing entry with its place in the shop's time. */
export interface Placed {
  entry: Entry
  /** As the journal knows it: in lower case. */
  id: string
  /** Milliseconds since 1970-01-01 UTC. */
  ms: number
  at: ShopTime
}

/** Entries of a file that stand, each once, in the order of the journal: by instant, rank and id. */
export function placeAll(entries: readonly Entry[], withdrawn: ReadonlySet<string>, clock: ShopClock): Placed[] {
  const once = new Map<string, Placed>()
  for (const entry of entries) {
    const id = entry.id.toLowerCase()
    if (!withdrawn.has(id) && !once.has(id)) once.set(id, place(entry, id, clock))
  }
  return [...once.values()]
    .filter(inCalendar)
    .sort(
      (a, b) => a.ms - b.ms || rankOf(a.entry.kind) - rankOf(b.entry.kind) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
    )
}

export function place(entry: Entry, id: string, clock: ShopClock): Placed {
  const ms = Date.parse(entry.at)
  return { entry, id, ms, at: clock.at(ms) }
}

/** Whether text of fixed width can name the instant: the years 0 to 9999 in UTC. */
export const inCalendar = ({ ms }: Pick<Placed, 'ms'>): boolean =>
  ms >= -62_167_219_200_000 && ms <= 253_402_300_799_999
