import type { PickupBeyond, WasteNow } from '../waste/container.ts'
import type { Reconciled, WasteSums } from '../waste/reconcile.ts'
import { sayCalendarDay, sayOnDate } from './calendar-days.ts'
import { sayCount } from './phrases.ts'
import type { StockReader } from './stock.ts'
import { sayNumber, sayVolume } from './units.ts'

/** What is said of a waste container. */
export interface WasteWords {
  name: string
  now: WasteNow
  capacity: number | null
}

/** "Emulsion tank: 1310 L of 2000 L, full about 3 January; to be fetched by 12 January, in 45 days." */
export function sayWaste({ name, now, capacity }: WasteWords, reader: StockReader): string {
  const there =
    now.litres <= 0
      ? 'empty'
      : `${sayVolume(now.litres, reader)}${capacity === null ? '' : ` of ${sayVolume(capacity, reader)}`}`
  const parts = [fullWords(now, reader), clockWords(now, reader)].filter((part) => part !== '')
  return `${name}: ${[there, ...parts].join('; ')}.`
}

/** Days from which on it says nothing when a container will be full. */
const farDays = 365

function fullWords({ fullOn, over, litres }: WasteNow, reader: StockReader): string {
  if (over > 0) return `${sayVolume(over, reader)} more than it holds`
  if (fullOn === null || litres <= 0 || fullOn > reader.today + farDays) return ''
  if (fullOn === reader.today) return 'it is full'
  return `full about ${sayCalendarDay(fullOn, reader)}`
}

function clockWords({ clock }: WasteNow, reader: StockReader): string {
  if (clock.outcome !== 'running') return ''
  const { endsOn, daysLeft } = clock
  if (daysLeft < 0) return `its time ended ${sayOnDate(endsOn, reader)}, ${sayCount(-daysLeft, 'day', 'days')} ago`
  if (daysLeft === 0) return 'its time ends today'
  return `to be fetched by ${sayCalendarDay(endsOn, reader)}, in ${sayCount(daysLeft, 'day', 'days')}`
}

/** Since when the clock runs, and by what. */
export function sayTerm(
  { clock }: WasteNow,
  term: { count: number; unit: string; source: string | null; from: 'first' | 'full' } | null,
  reader: StockReader,
): string {
  if (term === null) return 'No storage term is set: your permit, your authority or your carrier says which holds.'
  const length = `${sayNumber(term.count, 0)} ${term.count === 1 ? term.unit.replace(/s$/, '') : term.unit}`
  const by = term.source === null ? ' (no source was given)' : ` (${term.source})`
  const from = term.from === 'full' ? 'the day it was full' : 'the first drop'
  const since =
    clock.outcome === 'running' ? ` It runs since ${sayCalendarDay(clock.startedOn, reader)}.` : ' It is not running.'
  return `It may wait ${length} from ${from} on${by}.${since}`
}

/** A pickup beyond what the book knew of. */
export function sayBeyond({ on, litres, had }: PickupBeyond, reader: StockReader): string {
  return `The pickup ${sayOnDate(on, reader)} took ${sayVolume(litres, reader)}, and the book knew of ${sayVolume(had, reader)}: ${sayVolume(litres - had, reader)} were put in unwritten, or the paper says another amount.`
}

const kindWords: Readonly<Record<string, string>> = {
  emulsion: 'Emulsion',
  oil: 'Oil',
  sludge: 'Sludge',
  rinse: 'Rinse water',
  other: 'Other waste',
}
const giverWords: Readonly<Record<string, string>> = {
  emulsion: 'drawn off and cleaned out',
  oil: 'skimmed',
  sludge: 'cleaned out',
  rinse: 'rinsed out',
  other: 'given by the sumps',
}

/** What the sumps gave beside what was stored, and what of it is not explained. */
export function sayReconciled(
  kind: string,
  { given, stored }: WasteSums,
  found: Reconciled,
  reader: StockReader,
): string | null {
  const name = kindWords[kind] ?? kind
  const sums = `${name}: ${sayVolume(given, reader)} ${giverWords[kind] ?? ''}, ${sayVolume(stored, reader)} written as stored`
  switch (found.outcome) {
    case 'nothing':
      return null
    case 'agrees':
      return `${sums}: they agree.`
    case 'lost':
      return `${sums}. ${sayVolume(found.litres, reader)} are not explained: stored unwritten, or gone another way.`
    case 'gained':
      return `${sums}. ${sayVolume(found.litres, reader)} are not explained: a draw-off, a skim or a cleanout was not written.`
  }
}

/** What told no amount. */
export const sayWasteUnmeasured = (count: number): string =>
  `${sayCount(count, 'draw-off, skim or cleanout told', 'draw-offs, skims or cleanouts told')} no amount, and count as nothing.`
