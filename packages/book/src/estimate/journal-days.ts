import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry } from '../schema/entries/index.ts'
import type { ThingHistory } from '../setup/things.ts'
import type { JournalReader, StoredEntry } from '../store/store.ts'
import type { DaySource } from './fold-shop.ts'
import { inCalendar, type Placed, place, placeAll } from './placed.ts'
import { dayMs, type ShopClock } from './shop-clock.ts'
import { type Span, shopDays } from './shop-events.ts'
import { freshTranslation } from './translation.ts'

/** Everything beside its entries by which a journal is read. */
export interface JournalContext {
  history: ThingHistory
  clock: ShopClock
}

/** Entries read from a store at once. */
const atOnce = 1000
/** No zone's clock is further from UTC. */
const widestOffset = 16 * 3_600_000

/** The days of a journal, read page by page. */
export async function journalDays(
  journal: JournalReader,
  context: JournalContext,
  { until = Number.POSITIVE_INFINITY }: { until?: number } = {},
): Promise<DaySource> {
  const withdrawn = withdrawnBy(await journal.voids())
  return {
    days: (span, memory) => {
      const sumps = new Map<string, string>()
      const batches = pagesOf(journal, context.clock, { span, until, withdrawn, sumps })
      return shopDays(batches, {
        ...context,
        span,
        until,
        memory: memory ?? freshTranslation(),
        sumpOf: (id) => sumps.get(id),
      })
    },
  }
}

/** The days of entries at hand. */
export function entryDays(
  entries: readonly Entry[],
  context: JournalContext,
  { until = Number.POSITIVE_INFINITY }: { until?: number } = {},
): DaySource {
  const voids = entries.flatMap((entry) =>
    entry.kind === 'void' ? [{ id: entry.id.toLowerCase(), target: entry.entry.toLowerCase() }] : [],
  )
  const placed = placeAll(entries, withdrawnBy(voids), context.clock).filter(({ ms }) => ms <= until)
  let sumps: Map<string, string> | null = null
  const sumpOf = (id: string) => {
    sumps ??= new Map(
      entries.flatMap((entry) => (typeof entry.sump === 'string' ? [[entry.id.toLowerCase(), entry.sump]] : [])),
    )
    return sumps.get(id)
  }
  return {
    days: (span, memory) =>
      shopDays([within(placed, span)], { ...context, span, until, memory: memory ?? freshTranslation(), sumpOf }),
  }
}

function within(placed: readonly Placed[], { from, before }: Span): readonly Placed[] {
  return placed.slice(firstFrom(placed, from), firstFrom(placed, before))
}

function firstFrom(placed: readonly Placed[], day: number): number {
  let [low, high] = [0, placed.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (placed[middle]!.at < day) low = middle + 1
    else high = middle
  }
  return low
}

interface Wanted {
  span: Span
  until: number
  withdrawn: ReadonlySet<string>
  /** Is filled with the sumps of entries that verdicts name. */
  sumps: Map<string, string>
}

async function* pagesOf(
  journal: JournalReader,
  clock: ShopClock,
  { span: { from, before }, until, withdrawn, sumps }: Wanted,
): AsyncGenerator<Placed[]> {
  const since = instantText(from * dayMs - widestOffset)
  const end = instantText(Math.min(before * dayMs + widestOffset, until))
  let last: StoredEntry | undefined
  do {
    const page: StoredEntry[] = await journal.entries({
      order: 'time',
      since,
      until: end,
      limit: atOnce,
      ...(last === undefined ? {} : { after: { at: last.at, rank: last.rank, id: last.id } }),
    })
    const placed = page
      .filter(({ id }) => !withdrawn.has(id))
      .map(({ id, body }) => place(JSON.parse(body) as Entry, id, clock))
      .filter(inCalendar)
    await findSumps(journal, placed, sumps)
    yield placed
    last = page.length < atOnce ? undefined : page.at(-1)
  } while (last !== undefined)
}

async function findSumps(journal: JournalReader, placed: readonly Placed[], sumps: Map<string, string>): Promise<void> {
  const named = placed.flatMap(({ entry }) => (entry.kind === 'verdict' ? (entry.entries ?? []) : []))
  if (named.length === 0) return
  for (const [id, body] of await journal.bodies(named.map((id) => id.toLowerCase()))) {
    const { sump } = JSON.parse(body) as Entry
    if (typeof sump === 'string') sumps.set(id, sump)
  }
}

/** An instant as text in which the journal's order is that of time: within the years that text can name. */
function instantText(ms: number): string {
  const [first, last] = [Date.parse('0000-01-01T00:00:00.000Z'), Date.parse('9999-12-31T23:59:59.999Z')]
  return new Date(Math.min(Math.max(ms, first), last)).toISOString()
}
