import { dayNumber, isDay, type StockEvent } from '@sumpbook/fluid'
import type { ShopClock } from '../estimate/shop-clock.ts'
import type { Logged } from '../journal/entry-log.ts'
import type { ThingHistory } from '../setup/things.ts'
import { concentratePoured, type PourMemory } from './concentrate-poured.ts'
import type { Movement } from './stock-answer.ts'
import type { StockEntry } from './stock-log.ts'

/** An order that was written. */
export interface OrderWritten {
  entry: string
  /** UTC text. */
  at: string
  on: number
  litres: number
  /** Null where nobody said. */
  expectedOn: number | null
}

/** All that was written of one fluid's stock, both ways of use apart. */
export interface FluidRecords {
  /** Receipts and counts with issues; the same with pours. */
  byIssues: StockEvent[]
  byPours: StockEvent[]
  issued: number
  poured: number
  hasIssues: boolean
  /** Whether a receipt, a count or an order was ever written: without, nobody keeps stock of it here. */
  isKept: boolean
  /** Pours whose concentrate nobody measured. */
  unmeasured: number
  orders: OrderWritten[]
  receipts: { at: string; litres: number }[]
  movements: Movement[]
}

const empty = (): FluidRecords => ({
  byIssues: [],
  byPours: [],
  issued: 0,
  poured: 0,
  hasIssues: false,
  isKept: false,
  unmeasured: 0,
  orders: [],
  receipts: [],
  movements: [],
})

/** What was written, fluid by fluid, in order of time up to an instant. */
export function recordsByFluid(
  log: readonly Logged<StockEntry>[],
  history: ThingHistory,
  { until, clock }: { until: string; clock: ShopClock },
): Map<string, FluidRecords> {
  const fluids = new Map<string, FluidRecords>()
  const of = (fluid: string) => {
    const known = fluids.get(fluid) ?? empty()
    fluids.set(fluid, known)
    return known
  }
  const memory: PourMemory = { charged: new Map(), meters: new Map() }
  const dayAt = (at: string) => Math.floor(clock.at(Date.parse(at)))
  for (const { id, at, kept } of log) {
    if (at > until) break
    if (kept.kind === 'pour') {
      const poured = concentratePoured(kept, history.at(at), memory)
      if (poured !== null) notePour(of(poured.fluid), poured, { entry: id, at, on: dayAt(at) })
    } else note(of(kept.fluid), kept, { entry: id, at, on: dayAt(at) })
  }
  return fluids
}

interface Placed {
  entry: string
  at: string
  on: number
}

function notePour(
  records: FluidRecords,
  { litres, lot }: { litres: number | null; lot: string | null },
  { entry, at, on }: Placed,
): void {
  records.movements.push({ entry, at, kind: 'pour', litres, lot })
  if (litres === null) records.unmeasured += 1
  else {
    records.poured += litres
    records.byPours.push({ kind: 'use', on, lot, litres })
  }
}

function note(records: FluidRecords, kept: Exclude<StockEntry, { kind: 'pour' }>, { entry, at, on }: Placed): void {
  const { kind, litres } = kept
  const lot = kept.kind === 'order' ? null : kept.lot
  records.movements.push({ entry, at, kind, litres, lot })
  if (kind !== 'issue') records.isKept = true
  if (litres === null) return
  switch (kept.kind) {
    case 'receipt': {
      const event: StockEvent = {
        kind: 'receipt',
        on,
        lot,
        litres,
        madeOn: dayIn(kept.made),
        openedOn: dayIn(kept.opened),
        seal: kept.seal,
      }
      records.byIssues.push(event)
      records.byPours.push(event)
      records.receipts.push({ at, litres })
      break
    }
    case 'count':
      records.byIssues.push({ kind: 'count', on, lot, litres })
      records.byPours.push({ kind: 'count', on, lot, litres })
      break
    case 'issue':
      records.hasIssues = true
      records.issued += litres
      records.byIssues.push({ kind: 'use', on, lot, litres })
      break
    case 'order':
      records.orders.push({ entry, at, on, litres, expectedOn: dayIn(kept.expectedOn) })
      break
  }
}

/** The day that a text begins with; null where it is none, such as "week 12". */
const dayIn = (text: string | null): number | null => {
  const day = text?.slice(0, 10) ?? ''
  return isDay(day) ? dayNumber(day) : null
}
