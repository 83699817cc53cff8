import {
  comparedPacks,
  type Reader,
  type SettledLimit,
  sayLevel,
  sayLimit,
  sayRefused,
  sayRule,
  saySource,
  sayTest,
  sayTopic,
  upperFirst,
} from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { BookError } from '../errors.ts'
import type { Sample } from '../samples/fold-samples.ts'
import type { Sump } from '../schema/things/index.ts'
import type { LimitLine, ShopCalendar, SumpCalendar, UnsettledLine } from './answer-types.ts'
import { freshPh } from './fresh-ph.ts'
import { type GuidedShop, readGuidedShop, toldOf } from './guided-shop.ts'
import { findingsOfSump, type TestsQuestion, testsOfSump } from './sump-tests.ts'

export interface CalendarQuestion {
  at: Date
  /** Entries after it do not count; the time of asking unless given. */
  until?: Date
  reader?: Partial<Reader>
}

/**
 * When which test of a sump is due, what its last results ask for, and where each of its limits comes from.
 *
 * @throws {BookError} `not-found` a sump the book does not have
 */
export async function readSumpCalendar(
  parts: Pick<BookParts, 'journal' | 'things'>,
  sump: string,
  { at, until = at, reader = {} }: CalendarQuestion,
): Promise<SumpCalendar> {
  const shop = await readGuidedShop(parts, { until, sump })
  const known = shop.things.sump.get(sump)
  if (known === undefined) throw new BookError('not-found', `This book has no sump "${sump}".`)
  const [one] = shop.sumps
  if (one === undefined) return straightOil(known, shop)
  const question = await questionOf(parts.journal, shop, one, { ms: at.getTime(), reader })
  return {
    sump: one.id,
    name: one.name,
    guidance: { outcome: shop.guidance.chosen.outcome, name: shop.guidance.name },
    tests: testsOfSump(question).map((test) => ({ ...test, name: upperFirst(sayTest(test.test)) })),
    findings: findingsOfSump(question),
    limits: (shop.limits.get(sump) ?? []).map((limit) => limitLine(limit, reader)),
    unsettled: shop.guidance.chosen.outcome === 'none' ? unsettled(reader) : [],
  }
}

/** A straight oil has no mix, no pH and no germs to test. */
const straightOil = ({ id, name }: Sump, { guidance }: GuidedShop): SumpCalendar => ({
  sump: id,
  name,
  guidance: { outcome: guidance.chosen.outcome, name: guidance.name },
  tests: [],
  findings: [],
  limits: [],
  unsettled: [],
})

/** The same for every sump that is tested, in walking order: tests and findings alone. */
export async function readCalendar(
  parts: Pick<BookParts, 'journal' | 'things'>,
  { at, until = at, reader = {} }: CalendarQuestion,
): Promise<ShopCalendar> {
  const shop = await readGuidedShop(parts, { until })
  const sumps = []
  for (const sump of shop.sumps) {
    const question = await questionOf(parts.journal, shop, sump, { ms: at.getTime(), reader })
    sumps.push({
      sump: sump.id,
      name: sump.name,
      tests: testsOfSump(question).map((test) => ({ ...test, name: upperFirst(sayTest(test.test)) })),
      findings: findingsOfSump(question),
    })
  }
  const { chosen, name } = shop.guidance
  return { at: at.toISOString(), guidance: { outcome: chosen.outcome, name }, sumps }
}

/** All that the tests of one sump are judged by; its fresh pH is looked up only where there is a later one to hold against it. */
export async function questionOf(
  journal: BookParts['journal'],
  shop: GuidedShop,
  sump: Sump,
  { ms, reader }: { ms: number; reader: Partial<Reader> },
): Promise<TestsQuestion> {
  const { told, since, things, guidance, clock, calendar, limits } = shop
  const own = toldOf(told, sump.id)
  const hasPh = own.readings.some(({ ph }) => ph !== undefined)
  const isJudged = (limits.get(sump.id) ?? []).some(({ quantity, end }) => quantity === 'ph' && end !== 'high')
  const fresh = hasPh && isJudged ? await freshPh(journal, { sump: sump.id, told: own, since, shop: told }) : null
  return {
    sump,
    told: own,
    samples: samplesOf(shop, sump.id),
    fresh,
    limits: limits.get(sump.id) ?? [],
    guidance,
    things,
    clock,
    calendar,
    ms,
    reader,
  }
}

const bySump = new WeakMap<GuidedShop, Map<string, Sample[]>>()

function samplesOf(shop: GuidedShop, sump: string): Sample[] {
  const grouped = bySump.get(shop) ?? Map.groupBy(shop.samples, (sample) => sample.sump)
  bySump.set(shop, grouped)
  return grouped.get(sump) ?? []
}

function limitLine(limit: SettledLimit, reader: Partial<Reader>): LimitLine {
  const { quantity, end, value, level, source, others } = limit
  return {
    quantity,
    end,
    value,
    text: sayLimit(limit, reader),
    level,
    levelName: sayLevel(level),
    source,
    refused: sayRefused(limit, reader),
    others: others.map((other) => ({
      text: sayLimit(other, reader),
      level: other.level,
      levelName: sayLevel(other.level),
      source: other.source,
    })),
  }
}

function unsettled(reader: Partial<Reader>): UnsettledLine[] {
  const { editions, topics } = comparedPacks()
  return topics.map(({ test, topic, rules, differs }) => ({
    name: `${upperFirst(sayTest(test))}: ${sayTopic(topic)}`,
    differs,
    says: rules.flatMap((rule, n) =>
      rule === null
        ? []
        : [{ pack: editions[n]!.name, text: sayRule(rule.says, reader), source: saySource(rule.source, reader) }],
    ),
  }))
}
