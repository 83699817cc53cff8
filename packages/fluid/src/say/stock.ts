import type { Demand } from '../stock/demand.ts'
import type { Stock } from '../stock/lots.ts'
import type { OrderSize } from '../stock/order-size.ts'
import type { OnOrder, PlannedUse, StockAhead } from '../stock/stock-ahead.ts'
import { type CalendarReader, sayByDate, sayCalendarDay, sayOnDate } from './calendar-days.ts'
import { sayCount, sayList } from './phrases.ts'
import { type Reader, sayNumber, sayVolume } from './units.ts'

/** All that is said of a fluid's stock. */
export interface StockWords {
  name: string
  stock: Stock
  /** Null where nothing is known of what goes. */
  demand: Demand | null
  ahead: StockAhead | null
  order: OrderSize | null
  packSize: number
  onOrder: readonly OnOrder[]
}

export type StockReader = Reader & CalendarReader

/** "Blue 40: 430 L in 3 lots, lasts until about 12 January; order 2 drums by 2 December." */
export function sayStock(words: StockWords, reader: StockReader): string {
  const { name, stock, demand, ahead } = words
  const there =
    stock.litres === 0
      ? 'none in stock'
      : `${sayVolume(stock.litres, reader)} in ${sayCount(stock.lots.length, 'lot', 'lots')}`
  if (demand === null || ahead === null) return `${name}: ${there}; what goes in a week is not known yet.`
  return `${name}: ${there}${lastsWords(stock, ahead, reader)}; ${orderWords(words, reader)}.`
}

/** Of a fluid of which nobody keeps stock here. */
export function sayNotKept({ name, demand }: Pick<StockWords, 'name' | 'demand'>, reader: Reader): string {
  const goes = demand === null ? '' : ` About ${sayVolume(7 * demand.dailyMean, reader)} go in a week.`
  return `${name}: no delivery or count is written down yet.${goes}`
}

function lastsWords({ litres }: Stock, { runsOutOn: { likely } }: StockAhead, reader: StockReader): string {
  if (litres === 0) return ''
  if (likely === null) return ', lasts for more than two years'
  return likely === reader.today ? ', not enough for today' : `, lasts until about ${sayCalendarDay(likely, reader)}`
}

/** Days from which on an order is too far away to count its drums. */
const farDays = 60

function orderWords({ ahead, order, packSize, onOrder }: StockWords, reader: StockReader): string {
  const coming =
    onOrder.length === 0
      ? ''
      : `${sayVolume(
          onOrder.reduce((sum, { litres }) => sum + litres, 0),
          reader,
        )} on the way, expected ${sayOnDate(Math.min(...onOrder.map(({ expectedOn }) => expectedOn)), reader)}`
  if (ahead?.orderBy == null || order === null) return coming === '' ? 'nothing to order' : coming
  const isFar = ahead.orderBy - reader.today > farDays
  const drums = isFar
    ? `next order about ${sayCalendarDay(ahead.orderBy, reader)}`
    : `${coming === '' ? 'order' : 'then order'} ${sayPacks(order.packs, packSize, reader)} ${sayByDate(ahead.orderBy, reader)}`
  return coming === '' ? drums : `${coming}; ${drums}`
}

/** "2 drums of 200 L". */
export const sayPacks = (packs: number, packSize: number, reader: Reader): string =>
  `${sayCount(packs, 'drum', 'drums')} of ${sayVolume(packSize, reader)}`

const patternWords: Readonly<Record<Demand['pattern'], string>> = {
  steady: 'in most weeks, in like amounts',
  uneven: 'in most weeks, in unlike amounts',
  'now-and-then': 'now and then, in like amounts',
  lumpy: 'now and then, in unlike amounts',
}

/** How a fluid goes, and how sure that is; what the forecast cannot know stands in a sentence of its own. */
export function sayDemand(demand: Demand, reader: Reader): string {
  const { dailyMean, dailyMeanSd, weeks, pattern, isFirstGuess, idleWeeks, interval } = demand
  const spread = 1.645 * 7 * dailyMeanSd
  const [low, high] = [Math.max(0, 7 * dailyMean - spread), 7 * dailyMean + spread]
  const said = `About ${sayVolume(7 * dailyMean, reader)} go in a week (${sayVolume(low, reader)} to ${sayVolume(high, reader)}), ${patternWords[pattern]}; by the last ${sayCount(weeks, 'week', 'weeks')}.`
  const guess = isFirstGuess ? ' So few weeks make a first guess.' : ''
  const idle =
    idleWeeks >= Math.max(6, 3 * interval)
      ? ` Nothing went in the last ${sayCount(idleWeeks, 'week', 'weeks')}: it may be out of use.`
      : ''
  return said + guess + idle
}

/** A charge to come: "Fresh charge of Mill 8 on 12 March takes 40 L." */
export const sayPlannedUse = ({ on, litres, what }: PlannedUse, reader: StockReader): string =>
  `${what} ${on <= reader.today ? 'is to come and' : sayOnDate(on, reader)} takes ${sayVolume(litres, reader)}.`

/** From when to when the stock may last. */
export function sayRunsOut(
  { runsOutOn: { likely, earliest, latest } }: StockAhead,
  reader: StockReader,
): string | null {
  if (likely === null || earliest === null) return null
  const end = latest === null ? 'later than in two years' : sayCalendarDay(latest, reader)
  return `It may run out from ${sayCalendarDay(earliest, reader)} on; in one case of twenty it lasts until ${end}.`
}

/** What does not agree, what is too old or will be, what came with a broken seal: a sentence each. */
export function sayStockDoubts({ name, stock, ahead }: StockWords, reader: StockReader): string[] {
  const said: string[] = []
  if (stock.missing > 0) {
    said.push(
      `${sayVolume(stock.missing, reader)} more of ${name} was written as used than ever came in: a delivery, or the stock the book began with, is missing. Count the drums.`,
    )
  } else if (stock.belowNothingOn !== null) {
    said.push(
      `${sayOnDate(stock.belowNothingOn, reader).replace(/^o/, 'O').replace(/^t/, 'T')} more of ${name} was written as used than there was: a delivery, or the stock the book began with, is missing before it. Count the drums.`,
    )
  }
  for (const { lot, litres } of stock.overdrawn) {
    said.push(
      `Lot ${lot ?? 'without a number'} gave ${sayVolume(litres, reader)} more than came of it: another lot was meant, or a delivery is missing.`,
    )
  }
  if (stock.unknownLots.length > 0) {
    said.push(`Used, but never written as received: lot ${sayList(stock.unknownLots)}.`)
  }
  for (const { lot, litres, expiresOn, seal, agedFrom } of stock.lots) {
    const called = lot === null ? 'of unknown lot' : `of lot ${lot}`
    if (expiresOn !== null && expiresOn <= reader.today) {
      const since = agedFrom === 'arrival' ? ' at least' : ''
      said.push(
        `${sayVolume(litres, reader)} ${called} is past its shelf life since ${sayCalendarDay(expiresOn, reader)}${since}: ask its supplier before it is used.`,
      )
    }
    if (seal === 'broken') said.push(`${sayVolume(litres, reader)} ${called} came with a broken seal.`)
  }
  for (const { lot, litres, on } of ahead?.expiring ?? []) {
    if (on <= reader.today) continue
    said.push(
      `${sayVolume(litres, reader)} of lot ${lot ?? 'without a number'} will be too old ${sayOnDate(on, reader)}, before it is used.`,
    )
  }
  return said
}

/** Why so many drums. */
export function sayOrderSize({ packs, litres, because }: OrderSize, reader: Reader): string {
  const amount = `${sayCount(packs, 'drum', 'drums')}, ${sayVolume(litres, reader)}`
  switch (because) {
    case 'cost':
      return `${amount}: the cheapest between what orders cost and what keeping costs.`
    case 'four-weeks':
      return `${amount}: about four weeks’ use. Tell the price and what an order costs, and the cheapest size is worked out.`
    case 'far-below':
      return `${amount}: fewer would leave stock below the level at which the next order is due.`
    case 'shelf-life':
      return `${amount}: more would be too old before it is used.`
  }
}

/** What a count found beside what the book had. */
export function sayCountFound({ found, expected }: { found: number; expected: number }, reader: Reader): string {
  const difference = found - expected
  if (Math.abs(difference) < 0.5) return `Counted ${sayVolume(found, reader)}, as the book had it.`
  return `Counted ${sayVolume(found, reader)}, ${sayVolume(Math.abs(difference), reader)} ${difference < 0 ? 'less' : 'more'} than the book had.`
}

/** Pours that told no amount. */
export const sayUnmeasured = (count: number): string =>
  `${sayCount(count, 'pour has', 'pours have')} no amount of concentrate, and count as nothing.`

/** Issued against poured: what stands open on the floor, or was not written down. */
export function sayOnFloor({ issued, poured }: { issued: number; poured: number }, reader: Reader): string | null {
  if (issued === 0) return null
  const rest = issued - poured
  const share = sayNumber((100 * Math.max(0, poured)) / issued, 0)
  if (rest < -0.05 * issued) {
    return `Pours account for ${sayVolume(-rest, reader)} more than was issued: an issue was not written down.`
  }
  return `Of ${sayVolume(issued, reader)} issued, pours account for ${share} %; about ${sayVolume(Math.max(0, rest), reader)} stand open on the floor or were poured unwritten.`
}
