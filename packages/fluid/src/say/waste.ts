import type { PickupBeyond, WasteNow } from '../waste/container.ts'
import type { Reconciled, WasteSums } from '../waste/reconcile.ts'
import { message, say } from '../words/index.ts'
import { sayCalendarDay, sayOnDate } from './calendar-days.ts'
import type { StockReader } from './stock.ts'
import { sayVolume } from './units.ts'

/** What is said of a waste container. */
export interface WasteWords {
  name: string
  now: WasteNow
  capacity: number | null
}

/** "Emulsion tank: 1310 L of 2000 L, full about 3 January; to be fetched by 12 January, in 45 days." */
export function sayWaste({ name, now, capacity }: WasteWords, reader: StockReader): string {
  const parts = [thereWords(now, capacity, reader), fullWords(now, reader), clockWords(now, reader)]
  return say('{name}: {parts}.', { name, parts: parts.filter((part) => part !== '').join('; ') })
}

function thereWords({ litres }: WasteNow, capacity: number | null, reader: StockReader): string {
  if (litres <= 0) return say('empty')
  const there = sayVolume(litres, reader)
  return capacity === null
    ? there
    : say('{volume} of {capacity}', { volume: there, capacity: sayVolume(capacity, reader) })
}

/** Days from which on it says nothing when a container will be full. */
const farDays = 365

function fullWords({ fullOn, over, litres }: WasteNow, reader: StockReader): string {
  if (over > 0) return say('{volume} more than it holds', { volume: sayVolume(over, reader) })
  if (fullOn === null || litres <= 0 || fullOn > reader.today + farDays) return ''
  if (fullOn === reader.today) return say('it is full')
  return say('full about {date}', { date: sayCalendarDay(fullOn, reader) })
}

function clockWords({ clock }: WasteNow, reader: StockReader): string {
  if (clock.outcome !== 'running') return ''
  const { endsOn, daysLeft } = clock
  if (daysLeft < 0) {
    return say('its time ended {on}, {days, plural, one {# day} other {# days}} ago', {
      on: sayOnDate(endsOn, reader),
      days: -daysLeft,
    })
  }
  if (daysLeft === 0) return say('its time ends today')
  return say('to be fetched by {date}, in {days, plural, one {# day} other {# days}}', {
    date: sayCalendarDay(endsOn, reader),
    days: daysLeft,
  })
}

/** Since when the clock runs, and by what. */
export function sayTerm(
  { clock }: WasteNow,
  term: { count: number; unit: string; source: string | null; from: 'first' | 'full' } | null,
  reader: StockReader,
): string {
  if (term === null) {
    return say('No storage term is set: your permit, your authority or your carrier says which holds.')
  }
  const may = say(
    'It may wait {unit, select, days {{count, plural, one {# day} other {# days}}} months {{count, plural, one {# month} other {# months}}} other {{count, plural, one {# year} other {# years}}}} from {from, select, full {the day it was full} other {the first drop}} on ({hasSource, select, yes {{source}} other {no source was given}}).',
    {
      unit: term.unit,
      count: term.count,
      from: term.from,
      hasSource: term.source === null ? 'no' : 'yes',
      source: term.source ?? '',
    },
  )
  return clock.outcome === 'running'
    ? `${may} ${say('It runs since {date}.', { date: sayCalendarDay(clock.startedOn, reader) })}`
    : `${may} ${say('It is not running.')}`
}

/** A pickup beyond what the book knew of. */
export function sayBeyond({ on, litres, had }: PickupBeyond, reader: StockReader): string {
  return say(
    'The pickup {on} took {taken}, and the book knew of {had}: {beyond} were put in unwritten, or the paper says another amount.',
    {
      on: sayOnDate(on, reader),
      taken: sayVolume(litres, reader),
      had: sayVolume(had, reader),
      beyond: sayVolume(litres - had, reader),
    },
  )
}

const sumWords: Readonly<Record<string, string>> = {
  emulsion: message('Emulsion: {given} drawn off and cleaned out, {stored} written as stored'),
  oil: message('Oil: {given} skimmed, {stored} written as stored'),
  sludge: message('Sludge: {given} cleaned out, {stored} written as stored'),
  rinse: message('Rinse water: {given} rinsed out, {stored} written as stored'),
  other: message('Other waste: {given} given by the sumps, {stored} written as stored'),
}

/** What the sumps gave beside what was stored, and what of it is not explained. */
export function sayReconciled(
  kind: string,
  { given, stored }: WasteSums,
  found: Reconciled,
  reader: StockReader,
): string | null {
  const sums = say(sumWords[kind] ?? sumWords.other!, {
    given: sayVolume(given, reader),
    stored: sayVolume(stored, reader),
  })
  switch (found.outcome) {
    case 'nothing':
      return null
    case 'agrees':
      return say('{sums}: they agree.', { sums })
    case 'lost':
      return say('{sums}. {volume} are not explained: stored unwritten, or gone another way.', {
        sums,
        volume: sayVolume(found.litres, reader),
      })
    case 'gained':
      return say('{sums}. {volume} are not explained: a draw-off, a skim or a cleanout was not written.', {
        sums,
        volume: sayVolume(found.litres, reader),
      })
  }
}

/** What told no amount. */
export const sayWasteUnmeasured = (count: number): string =>
  say(
    '{count, plural, one {# draw-off, skim or cleanout} other {# draw-offs, skims or cleanouts}} told no amount, and count as nothing.',
    { count },
  )
