import type { DayNumber } from '../calendar/day-number.ts'
import type { Litres } from '../quantities.ts'
import type { Use } from './demand.ts'

/** What happened to the stock of one fluid, on a calendar day of the shop. */
export type StockEvent =
  | {
      kind: 'receipt'
      on: DayNumber
      lot: string | null
      litres: Litres
      madeOn: DayNumber | null
      openedOn: DayNumber | null
      seal: 'whole' | 'broken' | null
    }
  | { kind: 'use'; on: DayNumber; lot: string | null; litres: Litres }
  /** Somebody counted: of one lot, or of all there is. */
  | { kind: 'count'; on: DayNumber; lot: string | null; litres: Litres }

/** How long the fluid keeps. */
export interface Keeping {
  shelfLifeDays: number | null
  openedDays: number | null
}

/** One lot as it stands. */
export interface StockLot {
  /** As on the drum; null where nobody said. */
  lot: string | null
  litres: Litres
  received: Litres
  /** First of its receipts. */
  receivedOn: DayNumber
  madeOn: DayNumber | null
  openedOn: DayNumber | null
  /** The first day on which it is too old; null where its shelf life is not known. */
  expiresOn: DayNumber | null
  /** What its age was reckoned from: without a day of making from its arrival, which is too late. */
  agedFrom: 'made' | 'opened' | 'arrival' | null
  seal: 'whole' | 'broken' | null
  /** Litres that were written as taken from it beyond what it had. */
  overdrawn: Litres
}

/** A count, and what the book had at that time. */
export interface StockCount {
  on: DayNumber
  lot: string | null
  found: Litres
  expected: Litres
}

export interface Stock {
  /** What is left, soonest to expire first; lots that are used up are left out. */
  lots: StockLot[]
  litres: Litres
  /** Litres by which more was written as used than there can have been; 0 where the records agree. */
  missing: Litres
  /** The day on which the records first went below nothing since the last count; null where they never did. */
  belowNothingOn: DayNumber | null
  /** Lots named as used that never were received. */
  unknownLots: string[]
  /** Lots from which more was taken than came. */
  overdrawn: { lot: string | null; litres: Litres }[]
  counts: StockCount[]
  /** All that went, uses as written and what counts found missing, spread over the days since the count before. */
  uses: Use[]
  /** The first event's day; null without any. */
  firstDay: DayNumber | null
}

interface Shelf {
  lots: Map<string, StockLot>
  /** Taken when the book knew of nothing there. */
  owed: Litres
}

/** Below this nothing is left of a lot but the rounding of what was poured. */
const crumbs = 0.05

/**
 * The stock of one fluid by lots, folded from what was written. A use that names a lot is taken from it; one that names none, or a
 * lot that never came, from the lot that expires soonest. A count puts right what was written before it: what it finds missing went from the lots
 * that expire soonest, what it finds more is of an unknown lot. Nothing is ever refused: what cannot be is told in
 * `missing`, `belowNothingOn`, `unknownLots` and `overdrawn`. The balance begins with the first receipt or count: what was used before it
 * tells how much goes, and no more.
 *
 * @param events in order of time; the answer depends on nothing else
 * @example stockOf([{ kind: 'receipt', on: 0, lot: 'A', litres: 400, madeOn: null, openedOn: null, seal: null }], { shelfLifeDays: 365, openedDays: null }).litres // 400
 */
export function stockOf(events: readonly StockEvent[], keeping: Keeping): Stock {
  const shelf: Shelf = { lots: new Map(), owed: 0 }
  const known = new Set(events.flatMap(({ kind, lot }) => (kind === 'receipt' ? [keyOf(lot)] : [])))
  const unknownLots = new Set<string>()
  const counts: StockCount[] = []
  const uses: Use[] = []
  let belowNothingOn: DayNumber | null = null
  const begins = events.findIndex(({ kind }) => kind !== 'use')
  let countedOn = events[Math.max(0, begins)]?.on ?? 0
  for (const [n, event] of events.entries()) {
    if (event.kind === 'use') uses.push({ from: event.on, to: event.on, litres: event.litres })
    if (begins === -1 || n < begins) continue
    switch (event.kind) {
      case 'receipt':
        receive(shelf, event, keeping)
        break
      case 'use': {
        const isKnown = event.lot !== null && known.has(keyOf(event.lot))
        if (event.lot !== null && !isKnown) unknownLots.add(event.lot)
        if (isKnown) lotAt(shelf, event.lot, event.on).litres -= event.litres
        else takeSoonest(shelf, event.litres)
        break
      }
      case 'count': {
        const expected = event.lot === null ? totalOf(shelf) : (shelf.lots.get(keyOf(event.lot))?.litres ?? 0)
        counts.push({ on: event.on, lot: event.lot, found: event.litres, expected })
        if (expected > event.litres) {
          uses.push({ from: Math.min(countedOn, event.on), to: event.on, litres: expected - event.litres })
        }
        countShelf(shelf, event)
        if (event.lot === null) {
          countedOn = event.on
          belowNothingOn = null
          unknownLots.clear()
        }
        break
      }
    }
    if (belowNothingOn === null && totalOf(shelf) < -crumbs) belowNothingOn = event.on
  }
  const overdrawn = [...shelf.lots.values()].flatMap(({ lot, litres }) =>
    litres < -crumbs ? [{ lot, litres: -litres }] : [],
  )
  settle(shelf)
  const lots = [...shelf.lots.values()].filter(({ litres }) => litres > crumbs).sort(soonestFirst)
  return {
    lots,
    litres: lots.reduce((sum, { litres }) => sum + litres, 0),
    missing: shelf.owed > crumbs ? shelf.owed : 0,
    belowNothingOn,
    unknownLots: [...unknownLots].sort(),
    overdrawn,
    counts,
    uses,
    firstDay: events[0]?.on ?? null,
  }
}

const keyOf = (lot: string | null) => lot?.trim().toLowerCase() ?? ''
const totalOf = ({ lots, owed }: Shelf) => [...lots.values()].reduce((sum, { litres }) => sum + litres, -owed)

function lotAt(shelf: Shelf, lot: string | null, on: DayNumber): StockLot {
  const known = shelf.lots.get(keyOf(lot))
  if (known !== undefined) return known
  const fresh: StockLot = {
    lot,
    litres: 0,
    received: 0,
    receivedOn: on,
    madeOn: null,
    openedOn: null,
    expiresOn: null,
    agedFrom: null,
    seal: null,
    overdrawn: 0,
  }
  shelf.lots.set(keyOf(lot), fresh)
  return fresh
}

function receive(shelf: Shelf, event: Extract<StockEvent, { kind: 'receipt' }>, keeping: Keeping): void {
  const lot = lotAt(shelf, event.lot, event.on)
  const isFirst = lot.received === 0
  lot.litres += event.litres
  lot.received += event.litres
  lot.receivedOn = isFirst ? event.on : Math.min(lot.receivedOn, event.on)
  lot.seal = lot.seal === 'broken' ? 'broken' : (event.seal ?? lot.seal)
  lot.madeOn = earlier(lot.madeOn, event.madeOn)
  lot.openedOn = earlier(lot.openedOn, event.openedOn)
  Object.assign(lot, endOf(lot, keeping))
}

/** When a lot is too old: by the day it was made, else by its arrival; by the day it was opened where that ends sooner. */
function endOf(
  { madeOn, receivedOn, openedOn }: StockLot,
  { shelfLifeDays, openedDays }: Keeping,
): Pick<StockLot, 'expiresOn' | 'agedFrom'> {
  const shelved = shelfLifeDays === null ? null : (madeOn ?? receivedOn) + Math.floor(shelfLifeDays)
  const opened = openedOn === null || openedDays === null ? null : openedOn + Math.floor(openedDays)
  if (opened !== null && (shelved === null || opened < shelved)) return { expiresOn: opened, agedFrom: 'opened' }
  if (shelved === null) return { expiresOn: null, agedFrom: null }
  return { expiresOn: shelved, agedFrom: madeOn === null ? 'arrival' : 'made' }
}

const earlier = (a: DayNumber | null, b: DayNumber | null) => (a === null ? b : b === null ? a : Math.min(a, b))

/** Takes litres from the lots that expire soonest; what no lot has is owed. */
function takeSoonest(shelf: Shelf, litres: Litres): void {
  let left = litres
  for (const lot of [...shelf.lots.values()].sort(soonestFirst)) {
    const taken = Math.min(Math.max(0, lot.litres), left)
    lot.litres -= taken
    left -= taken
  }
  shelf.owed += left
}

/** Lots below nothing, and what is owed, are taken from the other lots. */
function settle(shelf: Shelf): void {
  let due = shelf.owed
  for (const lot of shelf.lots.values()) {
    if (lot.litres >= 0) continue
    due -= lot.litres
    lot.overdrawn = -lot.litres
    lot.litres = 0
  }
  shelf.owed = 0
  takeSoonest(shelf, due)
}

function countShelf(shelf: Shelf, { lot, litres, on }: Extract<StockEvent, { kind: 'count' }>): void {
  if (lot !== null) {
    lotAt(shelf, lot, on).litres = litres
    return
  }
  settle(shelf)
  const had = totalOf(shelf)
  shelf.owed = 0
  for (const one of shelf.lots.values()) one.overdrawn = 0
  if (litres < had) takeSoonest(shelf, had - litres)
  else if (litres > had) lotAt(shelf, null, on).litres += litres - Math.max(0, had)
}

/** A lot of unknown age comes last; of two that are alike the one that came first. */
function soonestFirst(a: StockLot, b: StockLot): number {
  const [endA, endB] = [a.expiresOn ?? Number.MAX_SAFE_INTEGER, b.expiresOn ?? Number.MAX_SAFE_INTEGER]
  return endA - endB || a.receivedOn - b.receivedOn || (keyOf(a.lot) < keyOf(b.lot) ? -1 : 1)
}
