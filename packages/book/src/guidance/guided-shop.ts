import type { SettledLimit } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { calendarOf } from '../estimate/calendar-of.ts'
import type { StrayResult } from '../samples/answer-types.ts'
import { foldSamples, type Sample } from '../samples/fold-samples.ts'
import type { Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import { inWalkingOrder } from '../today/condition.ts'
import { germClassesOf, limitsEverywhere, limitsOfSump } from './offered-limits.ts'
import { type ShopGuidance, shopGuidance } from './shop-guidance.ts'
import { nothingTold, type ToldOfShop, type ToldOfTests, toldOfTests } from './told-tests.ts'

/** A shop's tests as far as the journal tells of them, under what it goes by. */
export interface GuidedShop {
  things: Things
  guidance: ShopGuidance
  /** Sumps that have a mix to test, in walking order. */
  sumps: Sump[]
  told: ToldOfShop
  /** The instant from which the journal was read. */
  since: string
  /** Of each of these sumps, made when they are first asked for: who asks of samples needs those of few. */
  limits: LimitsBySump
  samples: Sample[]
  strays: StrayResult[]
  clock: ReturnType<typeof calendarOf>['clock']
  calendar: ReturnType<typeof calendarOf>['calendar']
}

export type LimitsBySump = Pick<ReadonlyMap<string, readonly SettledLimit[]>, 'get'>

/** Three four-weekly results and one to come, which is as far back as a rule looks. */
const usualDaysBack = 120
const dayMs = 86_400_000

/** @param sump one alone; without it the whole shop */
export async function readGuidedShop(
  { journal, things: readThings }: Pick<BookParts, 'journal' | 'things'>,
  { until, sump, daysBack = usualDaysBack }: { until: Date; sump?: string; daysBack?: number },
): Promise<GuidedShop> {
  const history = await readThings()
  const text = until.toISOString()
  const things = history.at(text)
  const guidance = shopGuidance(things)
  const { clock, calendar } = calendarOf(history)
  const days = Math.max(daysBack, longestOwn(guidance) + 14)
  // From the beginning of a day, so that what was read of the journal serves for a whole day.
  const since = new Date(Math.floor(until.getTime() / dayMs) * dayMs - days * dayMs).toISOString()
  const told = await toldOfTests(journal, { since, until: text, ...(sump === undefined ? {} : { sump }) })
  const sumps = [...things.sump.values()]
    .filter(({ id, fluid }) => (sump === undefined || id === sump) && isMixed(things, fluid))
    .sort((a, b) => inWalkingOrder(placed(a), placed(b)))
  const everywhere = limitsEverywhere(guidance)
  const limits = limitsWhenAsked(sumps, (one) =>
    limitsOfSump(one, toldOf(told, one.id), { things, guidance, everywhere }),
  )
  const classesOf = (id: string) => germClassesOf(limits.get(id) ?? [])?.classes ?? null
  const { samples, strays } = foldSamples(told, { guidance, until: text, classesOf })
  return { things, guidance, sumps, told, since, limits, samples, strays, clock, calendar }
}

function limitsWhenAsked(sumps: readonly Sump[], limitsOf: (sump: Sump) => readonly SettledLimit[]): LimitsBySump {
  const byId = new Map(sumps.map((sump) => [sump.id, sump]))
  const made = new Map<string, readonly SettledLimit[]>()
  return {
    get: (id) => {
      const sump = byId.get(id)
      if (sump !== undefined && !made.has(id)) made.set(id, limitsOf(sump))
      return made.get(id)
    },
  }
}

export const toldOf = ({ bySump }: ToldOfShop, sump: string): ToldOfTests => bySump.get(sump) ?? nothingTold()

const isMixed = (things: Things, fluid: string) => things.fluid.get(fluid)?.class !== 'straight-oil'

const placed = ({ name, order }: Sump) => ({ name, order: order ?? null })

/** What a shop tests once in a year is looked for as far back. */
const longestOwn = ({ own }: ShopGuidance): number =>
  Math.max(0, ...Object.values(own).map((tested) => (tested as { everyDays?: number } | undefined)?.everyDays ?? 0))
