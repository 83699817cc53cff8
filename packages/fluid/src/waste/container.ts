import { type DayNumber, type Term, termEnd } from '../calendar/day-number.ts'
import type { Litres, LitresPerDay } from '../quantities.ts'
import { demandOf, type Use } from '../stock/demand.ts'

/** What happened to one container, on a calendar day of the shop. */
export type WasteEvent =
  | { kind: 'stored'; on: DayNumber; litres: Litres }
  /** Fetched by the carrier; without litres all that was in it. */
  | { kind: 'pickup'; on: DayNumber; entry: string; litres: Litres | null }
  /** Somebody looked how full it is. */
  | { kind: 'level'; on: DayNumber; litres: Litres }

/** How large it is, and how long its waste may wait. */
export interface WasteVessel {
  capacity: Litres | null
  term: (Term & { from: 'first' | 'full' }) | null
}

/** Until when waste may wait. */
export type StorageClock =
  /** Nobody set a term. */
  | { outcome: 'no-term' }
  /** Nothing is in it that it runs for: empty, or not full yet where it runs from then. */
  | { outcome: 'not-running' }
  | { outcome: 'running'; startedOn: DayNumber; endsOn: DayNumber; daysLeft: number }

/** A pickup that took more than the book knew of. */
export interface PickupBeyond {
  on: DayNumber
  entry: string
  litres: Litres
  /** What the book had. */
  had: Litres
}

export interface WasteNow {
  litres: Litres
  /** Percent of its capacity; null where that is not known. */
  full: number | null
  clock: StorageClock
  /** Litres a day that come in on the mean; null where nothing is known of it. */
  daily: LitresPerDay | null
  /** When it is full at that pace; null where it never is, or nothing is known. Today where it is. */
  fullOn: DayNumber | null
  /** Litres above its capacity. */
  over: Litres
  beyond: PickupBeyond[]
  /** Levels that were seen, and what the book had. */
  levels: { on: DayNumber; found: Litres; expected: Litres }[]
  stored: Litres
  pickedUp: Litres
}

/** What stays in corners when a tank is emptied: a share of what was in it, and litres. */
const restShare = 0.03
const restLitres = 5

/**
 * How full a container is, until when its waste may wait, and when it will be full. The clock starts with the first drop after it was emptied
 * (or the day it was full, where the law says so) and goes on through a pickup that leaves something: what stays may be of the first
 * day. A pickup is a fact whatever the book had: one that took more empties it and is told in `beyond`.
 *
 * @param events in order of time
 * @throws {RangeError} a term that is none
 * @example wasteNow([{ kind: 'stored', on: 0, litres: 100 }], { vessel: { capacity: 200, term: { count: 90, unit: 'days', from: 'first' } }, today: 30 }) // half full, 60 days left
 */
export function wasteNow(
  events: readonly WasteEvent[],
  { vessel, today }: { vessel: WasteVessel; today: DayNumber },
): WasteNow {
  const { capacity, term } = vessel
  const tank = { litres: 0, startedOn: null as DayNumber | null, fullSince: null as DayNumber | null }
  const beyond: PickupBeyond[] = []
  const levels: WasteNow['levels'] = []
  const uses: Use[] = []
  let [stored, pickedUp] = [0, 0]
  for (const event of events) {
    switch (event.kind) {
      case 'stored':
        tank.litres += event.litres
        stored += event.litres
        uses.push({ from: event.on, to: event.on, litres: event.litres })
        break
      case 'pickup': {
        const had = tank.litres
        const taken = event.litres ?? had
        if (taken > had + rest(had)) beyond.push({ on: event.on, entry: event.entry, litres: taken, had })
        tank.litres = Math.max(0, had - taken)
        if (tank.litres <= rest(had)) Object.assign(tank, { litres: 0, startedOn: null })
        pickedUp += taken
        break
      }
      case 'level':
        levels.push({ on: event.on, found: event.litres, expected: tank.litres })
        tank.litres = event.litres
        break
    }
    if (tank.litres <= 0) tank.startedOn = null
    else tank.startedOn ??= event.on
    tank.fullSince = capacity === null || tank.litres < capacity ? null : (tank.fullSince ?? event.on)
  }
  const daily = events[0] === undefined ? null : (demandOf(uses, { firstDay: events[0].on, today })?.dailyMean ?? null)
  return {
    litres: tank.litres,
    full: capacity === null ? null : (100 * tank.litres) / capacity,
    clock: clockOf(term, tank, today),
    daily,
    fullOn: fullOn(tank.litres, { capacity, daily, today }),
    over: capacity === null ? 0 : Math.max(0, tank.litres - capacity),
    beyond,
    levels,
    stored,
    pickedUp,
  }
}

const rest = (had: Litres) => Math.max(restLitres, restShare * had)

function clockOf(
  term: WasteVessel['term'],
  { startedOn, fullSince }: { startedOn: DayNumber | null; fullSince: DayNumber | null },
  today: DayNumber,
): StorageClock {
  if (term === null) return { outcome: 'no-term' }
  const from = term.from === 'full' ? fullSince : startedOn
  if (from === null) return { outcome: 'not-running' }
  const endsOn = termEnd(from, term)
  return { outcome: 'running', startedOn: from, endsOn, daysLeft: endsOn - today }
}

function fullOn(
  litres: Litres,
  { capacity, daily, today }: { capacity: Litres | null; daily: LitresPerDay | null; today: DayNumber },
): DayNumber | null {
  if (capacity === null) return null
  if (litres >= capacity) return today
  if (daily === null || daily === 0) return null
  const days = Math.ceil((capacity - litres) / daily)
  return days > 3650 ? null : today + days
}

/** Whether a pickup is more than a container holds: what the form asks once before it writes it. */
export function isBeyond(litres: Litres, { had, capacity }: { had: Litres; capacity: Litres | null }): boolean {
  return litres > had + rest(had) || (capacity !== null && litres > capacity)
}
