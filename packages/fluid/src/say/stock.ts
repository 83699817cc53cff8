import type { Demand } from '../stock/demand.ts'
import type { Stock } from '../stock/lots.ts'
import type { OrderSize } from '../stock/order-size.ts'
import type { OnOrder, PlannedUse, StockAhead } from '../stock/stock-ahead.ts'
import { message, say } from '../words/index.ts'
import { type CalendarReader, sayByDate, sayCalendarDay, sayOnDate } from './calendar-days.ts'
import { sayList } from './phrases.ts'
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
      ? say('none in stock')
      : say('{volume} in {lots, plural, one {# lot} other {# lots}}', {
          volume: sayVolume(stock.litres, reader),
          lots: stock.lots.length,
        })
  if (demand === null || ahead === null) {
    return say('{name}: {there}; what goes in a week is not known yet.', { name, there })
  }
  const lasts = lastsWords(stock, ahead, reader)
  const order = orderWords(words, reader)
  return lasts === null
    ? say('{name}: {there}; {order}.', { name, there, order })
    : say('{name}: {there}, {lasts}; {order}.', { name, there, lasts, order })
}

/** Of a fluid of which nobody keeps stock here. */
export function sayNotKept({ name, demand }: Pick<StockWords, 'name' | 'demand'>, reader: Reader): string {
  const none = say('{name}: no delivery or count is written down yet.', { name })
  if (demand === null) return none
  return `${none} ${say('About {volume} go in a week.', { volume: sayVolume(7 * demand.dailyMean, reader) })}`
}

function lastsWords({ litres }: Stock, { runsOutOn: { likely } }: StockAhead, reader: StockReader): string | null {
  if (litres === 0) return null
  if (likely === null) return say('lasts for more than two years')
  return likely === reader.today
    ? say('not enough for today')
    : say('lasts until about {date}', { date: sayCalendarDay(likely, reader) })
}

/** Days from which on an order is too far away to count its drums. */
const farDays = 60

function orderWords({ ahead, order, packSize, onOrder }: StockWords, reader: StockReader): string {
  const coming =
    onOrder.length === 0
      ? null
      : say('{volume} on the way, expected {on}', {
          volume: sayVolume(
            onOrder.reduce((sum, { litres }) => sum + litres, 0),
            reader,
          ),
          on: sayOnDate(Math.min(...onOrder.map(({ expectedOn }) => expectedOn)), reader),
        })
  if (ahead?.orderBy == null || order === null) return coming ?? say('nothing to order')
  if (ahead.orderBy - reader.today > farDays) {
    const next = say('next order about {date}', { date: sayCalendarDay(ahead.orderBy, reader) })
    return coming === null ? next : `${coming}; ${next}`
  }
  const values = { packs: sayPacks(order.packs, packSize, reader), by: sayByDate(ahead.orderBy, reader) }
  return coming === null
    ? say('order {packs} {by}', values)
    : say('{coming}; then order {packs} {by}', { ...values, coming })
}

/** "2 drums of 200 L". */
export const sayPacks = (packs: number, packSize: number, reader: Reader): string =>
  say('{packs, plural, one {# drum} other {# drums}} of {size}', { packs, size: sayVolume(packSize, reader) })

const patternWords: Readonly<Record<Demand['pattern'], string>> = {
  steady: message('in most weeks, in like amounts'),
  uneven: message('in most weeks, in unlike amounts'),
  'now-and-then': message('now and then, in like amounts'),
  lumpy: message('now and then, in unlike amounts'),
}

/** How a fluid goes, and how sure that is; what the forecast cannot know stands in a sentence of its own. */
export function sayDemand(demand: Demand, reader: Reader): string {
  const { dailyMean, dailyMeanSd, weeks, pattern, isFirstGuess, idleWeeks, interval } = demand
  const spread = 1.645 * 7 * dailyMeanSd
  const [low, high] = [Math.max(0, 7 * dailyMean - spread), 7 * dailyMean + spread]
  const said = [
    say(
      'About {mean} go in a week ({low} to {high}), {pattern}; by the last {weeks, plural, one {# week} other {# weeks}}.',
      {
        mean: sayVolume(7 * dailyMean, reader),
        low: sayVolume(low, reader),
        high: sayVolume(high, reader),
        pattern: say(patternWords[pattern]),
        weeks,
      },
    ),
  ]
  if (isFirstGuess) said.push(say('So few weeks make a first guess.'))
  if (idleWeeks >= Math.max(6, 3 * interval)) {
    said.push(
      say('Nothing went in the last {weeks, plural, one {# week} other {# weeks}}: it may be out of use.', {
        weeks: idleWeeks,
      }),
    )
  }
  return said.join(' ')
}

/** A charge to come: "Fresh charge of Mill 8 on 12 March takes 40 L." */
export function sayPlannedUse({ on, litres, what }: PlannedUse, reader: StockReader): string {
  const volume = sayVolume(litres, reader)
  return on <= reader.today
    ? say('{what} is to come and takes {volume}.', { what, volume })
    : say('{what} {on} takes {volume}.', { what, on: sayOnDate(on, reader), volume })
}

/** From when to when the stock may last. */
export function sayRunsOut(
  { runsOutOn: { likely, earliest, latest } }: StockAhead,
  reader: StockReader,
): string | null {
  if (likely === null || earliest === null) return null
  const from = sayCalendarDay(earliest, reader)
  return latest === null
    ? say('It may run out from {from} on; in one case of twenty it lasts until later than in two years.', { from })
    : say('It may run out from {from} on; in one case of twenty it lasts until {until}.', {
        from,
        until: sayCalendarDay(latest, reader),
      })
}

/** What does not agree, what is too old or will be, what came with a broken seal: a sentence each. */
export function sayStockDoubts({ name, stock, ahead }: StockWords, reader: StockReader): string[] {
  const said: string[] = []
  if (stock.missing > 0) {
    said.push(
      say(
        '{volume} more of {name} was written as used than ever came in: a delivery, or the stock the book began with, is missing. Count the drums.',
        { volume: sayVolume(stock.missing, reader), name },
      ),
    )
  } else if (stock.belowNothingOn !== null) {
    said.push(
      say(
        '{isToday, select, yes {Today} other {On {date}}} more of {name} was written as used than there was: a delivery, or the stock the book began with, is missing before it. Count the drums.',
        {
          isToday: stock.belowNothingOn === reader.today ? 'yes' : 'no',
          date: sayCalendarDay(stock.belowNothingOn, reader),
          name,
        },
      ),
    )
  }
  for (const { lot, litres } of stock.overdrawn) {
    said.push(
      say(
        '{isKnown, select, yes {Lot {lot}} other {Lot without a number}} gave {volume} more than came of it: another lot was meant, or a delivery is missing.',
        { ...lotValues(lot), volume: sayVolume(litres, reader) },
      ),
    )
  }
  if (stock.unknownLots.length > 0) {
    said.push(say('Used, but never written as received: lot {lots}.', { lots: sayList(stock.unknownLots) }))
  }
  for (const { lot, litres, expiresOn, seal, agedFrom } of stock.lots) {
    const amount = { ...lotValues(lot), volume: sayVolume(litres, reader) }
    if (expiresOn !== null && expiresOn <= reader.today) {
      said.push(
        say(
          '{volume} {isKnown, select, yes {of lot {lot}} other {of unknown lot}} is past its shelf life since {date}{atLeast, select, yes { at least} other {}}: ask its supplier before it is used.',
          { ...amount, date: sayCalendarDay(expiresOn, reader), atLeast: agedFrom === 'arrival' ? 'yes' : 'no' },
        ),
      )
    }
    if (seal === 'broken') {
      said.push(
        say('{volume} {isKnown, select, yes {of lot {lot}} other {of unknown lot}} came with a broken seal.', amount),
      )
    }
  }
  for (const { lot, litres, on } of ahead?.expiring ?? []) {
    if (on <= reader.today) continue
    said.push(
      say(
        '{volume} {isKnown, select, yes {of lot {lot}} other {of lot without a number}} will be too old {on}, before it is used.',
        { ...lotValues(lot), volume: sayVolume(litres, reader), on: sayOnDate(on, reader) },
      ),
    )
  }
  return said
}

const lotValues = (lot: string | null) => ({ isKnown: lot === null ? 'no' : 'yes', lot: lot ?? '' })

/** Why so many drums. */
export const sayOrderSize = ({ packs, litres, because }: OrderSize, reader: Reader): string =>
  say(orderWhy[because], { packs, volume: sayVolume(litres, reader) })

const orderWhy: Readonly<Record<OrderSize['because'], string>> = {
  cost: message(
    '{packs, plural, one {# drum} other {# drums}}, {volume}: the cheapest between what orders cost and what keeping costs.',
  ),
  'four-weeks': message(
    '{packs, plural, one {# drum} other {# drums}}, {volume}: about four weeks’ use. Tell the price and what an order costs, and the cheapest size is worked out.',
  ),
  'far-below': message(
    '{packs, plural, one {# drum} other {# drums}}, {volume}: fewer would leave stock below the level at which the next order is due.',
  ),
  'shelf-life': message(
    '{packs, plural, one {# drum} other {# drums}}, {volume}: more would be too old before it is used.',
  ),
}

/** What a count found beside what the book had. */
export function sayCountFound({ found, expected }: { found: number; expected: number }, reader: Reader): string {
  const difference = found - expected
  const counted = sayVolume(found, reader)
  if (Math.abs(difference) < 0.5) return say('Counted {found}, as the book had it.', { found: counted })
  const values = { found: counted, difference: sayVolume(Math.abs(difference), reader) }
  return difference < 0
    ? say('Counted {found}, {difference} less than the book had.', values)
    : say('Counted {found}, {difference} more than the book had.', values)
}

/** Pours that told no amount. */
export const sayUnmeasured = (count: number): string =>
  say(
    '{count, plural, one {# pour has no amount of concentrate, and count} other {# pours have no amount of concentrate, and count}} as nothing.',
    { count },
  )

/** Issued against poured: what stands open on the floor, or was not written down. */
export function sayOnFloor({ issued, poured }: { issued: number; poured: number }, reader: Reader): string | null {
  if (issued === 0) return null
  const rest = issued - poured
  if (rest < -0.05 * issued) {
    return say('Pours account for {volume} more than was issued: an issue was not written down.', {
      volume: sayVolume(-rest, reader),
    })
  }
  return say(
    'Of {issued} issued, pours account for {share} %; about {rest} stand open on the floor or were poured unwritten.',
    {
      issued: sayVolume(issued, reader),
      share: sayNumber((100 * Math.max(0, poured)) / issued, 0),
      rest: sayVolume(Math.max(0, rest), reader),
    },
  )
}
