import {
  type Demand,
  dayText,
  demandOf,
  type OrderSize,
  orderSize,
  type PlannedUse,
  type Reader,
  type ReorderAnswer,
  reorder,
  type Stock,
  type StockAhead,
  type StockWords,
  sayCautions,
  sayCountFound,
  sayDemand,
  sayNotKept,
  sayOnFloor,
  sayOrderSize,
  sayPlannedUse,
  sayRunsOut,
  sayStock,
  sayStockDoubts,
  sayUnmeasured,
  stockAhead,
  stockOf,
  unitsHere,
} from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { calendarOf } from '../estimate/calendar-of.ts'
import { inTime } from '../journal/entry-log.ts'
import type { Fluid } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import { type FluidRecords, recordsByFluid } from './fluid-records.ts'
import { type AwaitedOrder, awaited } from './on-order.ts'
import { plannedCharges } from './planned-charges.ts'
import { stockSettings } from './settings.ts'
import type { FluidStock, StockAnswer, StockSettings } from './stock-answer.ts'
import { pourLog, stockLog } from './stock-log.ts'

export interface StockQuestion {
  at: Date
  /** Entries after it do not count; the time of asking unless given. */
  until?: Date
  /** Movements from this day on, and up to that one, in the shop's zone; the last 90 days without them. */
  from?: string
  to?: string
  reader?: Partial<Reader>
  /** Concentrate that cleanouts to come will need, fluid by fluid; that of the shop's open and planned jobs without it. */
  planned?: ReadonlyMap<string, readonly PlannedUse[]>
}

/** Days of movements that are shown without being asked for. */
const movementDays = 90

/** What there is of each fluid, of which lots, how long it lasts, and when to order how much. Queries never write. */
export async function readStock(parts: BookParts, question: StockQuestion): Promise<StockAnswer> {
  const { fluids, things, today } = await stockOfFluids(parts, question)
  const reader = { units: unitsHere(things.shop), ...question.reader, today }
  const from = question.from ?? dayText(today - movementDays)
  const to = question.to ?? dayText(today)
  const { clock } = calendarOf(await parts.things())
  const dayAt = (at: string) => dayText(Math.floor(clock.at(Date.parse(at))))
  return {
    at: question.at.toISOString(),
    today: dayText(today),
    from,
    to,
    fluids: fluids.map((one) => ({
      ...answerOf(one, reader),
      movements: one.records.movements.filter(({ at }) => dayAt(at) >= from && dayAt(at) <= to).reverse(),
    })),
  }
}

/** Everything known of one fluid's stock. */
export interface FluidNow {
  fluid: Fluid
  records: FluidRecords
  settings: StockSettings
  usedBy: 'issues' | 'pours'
  stock: Stock
  demand: Demand | null
  level: ReorderAnswer | null
  ahead: StockAhead | null
  order: OrderSize | null
  onOrder: AwaitedOrder[]
  planned: readonly PlannedUse[]
}

/**
 * The stock of every fluid of the shop, in the order of its things, then of those it does not know.
 *
 * @param pours `where-they-count`: they are left unread where no fluid that is kept here is counted by them
 */
export async function stockOfFluids(
  parts: Pick<BookParts, 'journal' | 'things'>,
  { at, until = at, planned: told }: StockQuestion,
  pours: 'all' | 'where-they-count' = 'all',
): Promise<{ fluids: FluidNow[]; things: Things; today: number }> {
  const [log, history] = await Promise.all([stockLog(parts.journal), parts.things()])
  const { clock } = calendarOf(history)
  const things = history.at(until.toISOString())
  const fold = (entries: typeof log) => recordsByFluid(entries, history, { until: until.toISOString(), clock })
  let records = fold(log)
  const isPoured = [...records].some(
    ([id, of]) => of.isKept && (things.fluid.get(id)?.stock?.usedBy ?? (of.hasIssues ? 'issues' : 'pours')) === 'pours',
  )
  if (pours === 'all' || isPoured) records = fold(inTime(log, await pourLog(parts.journal)))
  const today = Math.floor(clock.at(at.getTime()))
  const planned = told ?? (await plannedCharges(parts, { at, until, today }))
  const known = [...things.fluid.values()]
  const others = [...records.keys()].filter((id) => !things.fluid.has(id)).sort()
  const fluids = [...known, ...others.map((id): Fluid => ({ id, name: id }))].map((fluid) =>
    fluidNow(fluid, {
      records: records.get(fluid.id) ?? noRecords,
      settings: stockSettings(fluid, things.shop.units),
      planned: planned.get(fluid.id) ?? [],
      today,
    }),
  )
  return { fluids, things, today }
}

const noRecords: FluidRecords = {
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
}

function fluidNow(
  fluid: Fluid,
  {
    records,
    settings,
    planned,
    today,
  }: { records: FluidRecords; settings: StockSettings; planned: readonly PlannedUse[]; today: number },
): FluidNow {
  const usedBy = settings.usedBy ?? (records.hasIssues ? 'issues' : 'pours')
  const events = usedBy === 'issues' ? records.byIssues : records.byPours
  const stock = stockOf(events, {
    shelfLifeDays: fluid.shelfLifeDays ?? null,
    openedDays: fluid.stock?.openedDays ?? null,
  })
  const demand = stock.firstDay === null ? null : demandOf(stock.uses, { firstDay: stock.firstDay, today })
  const onOrder = awaited(records, settings.leadDays.value)
  const base = { fluid, records, settings, usedBy, stock, demand, onOrder, planned } as const
  if (demand === null || !records.isKept) return { ...base, level: null, ahead: null, order: null }
  const level = levelOf(demand, settings)
  const ahead = stockAhead({
    today,
    lots: stock.lots,
    demand,
    planned,
    onOrder,
    leadDays: settings.leadDays.value,
    safetyStock: level.safetyStock,
  })
  return { ...base, level, ahead, order: orderOf({ ...base, demand, level, ahead }, today) }
}

const levelOf = (
  { dailyMean, dailySd, dailyMeanSd }: Demand,
  { leadDays, leadSd, service, orderCost, holdingCostPerYear, packSize }: StockSettings,
): ReorderAnswer =>
  reorder({
    dailyMean,
    dailySd,
    dailyMeanSd,
    leadDays: leadDays.value,
    leadSd: leadSd.value,
    service: service.value / 100,
    orderCost,
    holdingCostPerYear,
    packSize: packSize.value,
  })

/** Null where there is nothing to order within two years. */
function orderOf(
  {
    fluid,
    settings,
    stock,
    demand,
    level,
    ahead,
    onOrder,
    planned,
  }: Pick<FluidNow, 'fluid' | 'settings' | 'stock' | 'onOrder' | 'planned'> & {
    demand: Demand
    level: ReorderAnswer
    ahead: StockAhead
  },
  today: number,
): OrderSize | null {
  const { orderBy } = ahead
  if (orderBy === null) return null
  const arrival = orderBy + settings.leadDays.value
  const sum = (list: readonly { litres: number }[]) => list.reduce((total, { litres }) => total + litres, 0)
  const used = demand.dailyMean * (orderBy - today) + sum(planned.filter(({ on }) => on <= arrival))
  const tooOld = sum(ahead.expiring.filter(({ on }) => on <= arrival))
  return orderSize({
    packSize: settings.packSize.value,
    dailyMean: demand.dailyMean,
    economicQuantity: level.economicQuantity,
    reorderPoint: level.reorderPoint,
    position: Math.max(0, stock.litres + sum(onOrder) - used - tooOld),
    shelfDays: fluid.shelfLifeDays ?? null,
  })
}

function answerOf(now: FluidNow, reader: Reader & { today: number }): Omit<FluidStock, 'movements'> {
  const { fluid, records, settings, usedBy, stock, demand, level, ahead, order, onOrder } = now
  const day = (on: number | null) => (on === null ? null : dayText(on))
  const words = wordsOf(now)
  const says = [
    ...(demand === null ? [] : [sayDemand(demand, reader)]),
    ...now.planned.map((use) => sayPlannedUse(use, reader)),
    ...(ahead === null ? [] : [sayRunsOut(ahead, reader)]),
    ...(order === null || ahead?.orderBy == null ? [] : [sayOrderSize(order, reader)]),
    ...(usedBy === 'issues' ? [sayOnFloor(records, reader)] : []),
    ...(usedBy === 'pours' && records.unmeasured > 0 ? [sayUnmeasured(records.unmeasured)] : []),
  ].filter((sentence) => sentence !== null)
  return {
    fluid: fluid.id,
    name: fluid.name,
    class: fluid.class ?? null,
    isKept: records.isKept,
    sentence: records.isKept ? sayStock(words, reader) : sayNotKept(words, reader),
    says,
    doubts: records.isKept ? sayStockDoubts(words, reader) : [],
    cautions: stock.lots.some(
      ({ seal, expiresOn }) => seal === 'broken' || (expiresOn ?? reader.today + 1) <= reader.today,
    )
      ? sayCautions(['oldConcentrate'])
      : [],
    usedBy,
    usedBySet: settings.usedBy !== null,
    litres: stock.litres,
    lots: stock.lots.map((lot) => ({
      lot: lot.lot,
      litres: lot.litres,
      received: lot.received,
      receivedOn: dayText(lot.receivedOn),
      madeOn: day(lot.madeOn),
      expiresOn: day(lot.expiresOn),
      agedFrom: lot.agedFrom,
      seal: lot.seal,
    })),
    unmeasured: records.unmeasured,
    issued: records.issued,
    poured: records.poured,
    demand,
    reorderPoint: level?.reorderPoint ?? null,
    safetyStock: level?.safetyStock ?? null,
    runsOutOn:
      ahead === null
        ? null
        : {
            likely: day(ahead.runsOutOn.likely),
            earliest: day(ahead.runsOutOn.earliest),
            latest: day(ahead.runsOutOn.latest),
          },
    order:
      order === null || ahead?.orderBy == null
        ? null
        : { packs: order.packs, litres: order.litres, because: order.because, by: dayText(ahead.orderBy) },
    onOrder: onOrder.map(({ entry, litres, orderedOn, expectedOn }) => ({
      entry,
      litres,
      orderedOn: dayText(orderedOn),
      expectedOn: dayText(expectedOn),
      late: expectedOn < reader.today,
    })),
    planned: now.planned.map(({ on, litres, what }) => ({ on: dayText(on), litres, what })),
    expiring: (ahead?.expiring ?? []).map(({ lot, litres, on }) => ({ lot, litres, on: dayText(on) })),
    counts: stock.counts.map(({ on, lot, found, expected }) => ({
      on: dayText(on),
      lot,
      found,
      expected,
      says: sayCountFound({ found, expected }, reader),
    })),
    settings,
  }
}

/** What is said of a fluid. */
export const wordsOf = ({ fluid, settings, stock, demand, ahead, order, onOrder }: FluidNow): StockWords => ({
  name: fluid.name,
  stock,
  demand,
  ahead,
  order,
  packSize: settings.packSize.value,
  onOrder,
})
