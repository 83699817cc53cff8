import {
  estimateSump,
  holdingStrength,
  type ShopEstimate,
  type SumpEstimate,
  smoothSump,
  unitsHere,
} from '@sumpbook/fluid'
import type { TodayReader } from '../book-parts.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Sump } from '../schema/things/index.ts'
import type { ThingHistory } from '../setup/things.ts'
import type { JournalReader } from '../store/store.ts'
import type { Ends, Fan, FannedDay, Outlook, SumpAnswer } from './answer-types.ts'
import type { Checkpoints } from './checkpoints.ts'
import { benchFor, estimateDocument, instantText } from './estimate-document.ts'
import { dayMs } from './shop-clock.ts'
import type { ShopStanding } from './shop-standing.ts'
import { toldOfSump } from './told-of-sump.ts'

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
  { journal, checkpoints, things }: OutlookParts,
  { sump, at, daysBack = usualDaysBack, reader = {} }: OutlookQuestion,
): Promise<Outlook> {
  const { standing, sumps } = await checkpoints.standing(at.getTime(), sump)
  const units = unitsHere(standing.things.shop)
  const text = instantText(at.getTime())
  const document = estimateDocument(standing, { at: text, ahead: [], sumps }, { units, ...reader })
  const answer = document.sumps[sump]!
  const days = Array.from({ length: daysAhead }, (_, i) => i + 1)
  const since = instantText(at.getTime() - daysBack * dayMs)
  return {
    sump,
    at: text,
    ...answer,
    limits: limitsOf(standing, sumps[0]!),
    topUpToHold: topUpToHold(standing, sumps[0]!, answer.now),
    history: await historyOf({ journal, history: await things(), standing }, sump, daysBack),
    entries: await marksOf(journal, sump, { since, until: text }),
    ahead: fanned(standing, sump, days),
  }
}

/** What an outlook is read from. */
export interface OutlookParts {
  journal: JournalReader
  checkpoints: Checkpoints<ShopEstimate>
  things: () => Promise<ThingHistory>
}

interface PastParts {
  journal: JournalReader
  history: ThingHistory
  standing: ShopStanding
}

/** Its past with hindsight, along the likeliest story of each doubt. */
async function historyOf({ journal, history, standing }: PastParts, sump: string, daysBack: number) {
  const { shop, clock, ms } = standing
  const now = clock.at(ms)
  const events = await toldOfSump(journal, sump, { history, clock, ms })
  const { doubts } = estimateSump(shop, sump, now, [])
  const past = smoothSump(shop, { sump, events, doubts }, { from: Math.floor(now) - daysBack + 1, at: now })
  return past.map(({ at, concentration, volume, hardness }): FannedDay => {
    const fan = ({ mean, low90, high90, low50, high50 }: Fan): Fan => ({ mean, low90, high90, low50, high50 })
    return {
      at: instantText(clock.instantOf(at)),
      concentration: fan(concentration),
      volume: fan(volume),
      hardness: fan(hardness),
    }
  })
}

function limitsOf({ things, memory }: ShopStanding, sump: Sump): Outlook['limits'] {
  const fluid = things.fluid.get(memory.sumps.get(sump.id)?.charge?.fluid ?? sump.fluid)
  const of = (what: 'hardness' | 'chloride'): Ends | null => {
    const limit: { low?: number | undefined; high?: number | undefined } = {
      ...fluid?.limits?.[what],
      ...sump.limits?.[what],
    }
    const { low = null, high = null } = limit
    return low === null && high === null ? null : { low, high }
  }
  return { hardness: of('hardness'), chloride: of('chloride') }
}

function topUpToHold(standing: ShopStanding, sump: Sump, { evaporation, carryOff }: SumpAnswer['now']): number | null {
  const { target, class: kind } = benchFor(standing, sump)
  if (target === null || kind === 'straight-oil' || !(carryOff.mean > 0)) return null
  return holdingStrength({ target, evaporation: evaporation.mean, carryOff: carryOff.mean })
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
