import { estimateSump, type ShopEstimate, type SumpEstimate } from '@sumpbook/fluid'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { JournalReader } from '../store/store.ts'
import type { TodayReader } from '../today/read-today.ts'
import type { Checkpoints } from './checkpoints.ts'
import { estimateDocument, instantText, type SumpAnswer } from './estimate-document.ts'
import { dayMs } from './shop-clock.ts'
import type { ShopStanding } from './shop-standing.ts'

/** One sump's past and future, as a drawing needs it. Times RFC 3339. */
export interface Outlook extends Omit<SumpAnswer, 'ahead'> {
  sump: string
  at: string
  /** Where it stood at the end of each day, by the records up to then; from its first record on. */
  history: FannedDay[]
  /** What was written of it in that time and stands, for marks. */
  entries: { id: string; kind: string; at: string }[]
  /** Day by day with nothing added and nothing drawn off. */
  ahead: (FannedDay & { days: number })[]
}

/** Figures of one moment with the intervals of a fan. */
export interface FannedDay {
  at: string
  concentration: Fan
  volume: Fan
  hardness: Fan
}

/** A mean with its central intervals of 90 % and of 50 %. */
export interface Fan {
  mean: number
  low90: number
  high90: number
  low50: number
  high50: number
}

export interface OutlookQuestion {
  sump: string
  at: Date
  /** Days of the past; 120 without it. */
  daysBack?: number
  reader?: TodayReader
}

const daysAhead = 28
const usualDaysBack = 120
/** Half of a normal distribution lies within this many standard deviations of its mean. */
const quantile75 = 0.6744897501960817

/**
 * A sump's past, now and future.
 *
 * @throws {BookError} `not-found` a sump the book does not have
 */
export async function readOutlook(
  journal: JournalReader,
  checkpoints: Checkpoints<ShopEstimate>,
  { sump, at, daysBack = usualDaysBack, reader = {} }: OutlookQuestion,
): Promise<Outlook> {
  const history: FannedDay[] = []
  const { standing, sumps } = await checkpoints.walk(at.getTime(), { sump, daysBack }, (then) => {
    if (then.memory.sumps.has(sump)) history.push(...fanned(then, sump, [0]).map(({ days: _, ...day }) => day))
  })
  const { units } = standing.things.shop
  const text = instantText(at.getTime())
  const document = estimateDocument(standing, { at: text, ahead: [], sumps }, { units, ...reader })
  const days = Array.from({ length: daysAhead }, (_, i) => i + 1)
  const since = instantText(at.getTime() - daysBack * dayMs)
  return {
    sump,
    at: text,
    ...document.sumps[sump]!,
    history,
    entries: await marksOf(journal, sump, { since, until: text }),
    ahead: fanned(standing, sump, days),
  }
}

function fanned({ shop, clock, ms }: ShopStanding, sump: string, days: readonly number[]): Outlook['ahead'] {
  return estimateSump(shop, sump, clock.at(ms), days).ahead.map((figures) => ({
    days: figures.days,
    at: instantText(ms + figures.days * dayMs),
    concentration: fanOf(figures.concentration, figures.inner.concentration),
    volume: fanOf(figures.volume, figures.inner.volume),
    hardness: fanOf(figures.hardness, halfOf(figures.hardness)),
  }))
}

type Figured = SumpEstimate['now']['concentration']

const fanOf = ({ mean, low90, high90 }: Figured, { low, high }: { low: number; high: number }): Fan => ({
  mean,
  low90,
  high90,
  low50: low,
  high50: high,
})

const halfOf = ({ mean, sd }: Figured) => ({ low: Math.max(0, mean - quantile75 * sd), high: mean + quantile75 * sd })

async function marksOf(journal: JournalReader, sump: string, span: { since: string; until: string }) {
  const [entries, voids] = await Promise.all([journal.entries({ sump, order: 'time', ...span }), journal.voids()])
  const withdrawn = withdrawnBy(voids)
  return entries.filter(({ id }) => !withdrawn.has(id)).map(({ id, kind, at }) => ({ id, kind, at }))
}
