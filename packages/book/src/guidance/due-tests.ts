import {
  alligation,
  type CalendarTest,
  message,
  say,
  sayCautions,
  sayList,
  sayNumber,
  sayPassage,
  sayTestsDue,
} from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { dayText } from '../estimate/shop-clock.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Sump, Water } from '../schema/things/index.ts'
import type { Due } from '../today/due.ts'
import type { DueQuestion, DueSource } from '../today/due-sources.ts'
import type { Finding, SumpTest } from './answer-types.ts'
import { type GuidedShop, readGuidedShop } from './guided-shop.ts'
import { questionOf } from './read-calendar.ts'
import { ruleOf, saysAnything } from './shop-guidance.ts'
import { findingsOfSump, testsOfSump } from './sump-tests.ts'

/** From so many sumps on, the same tests are one line for the round. */
const manySumps = 4

/**
 * Tests that are due, and results that cannot stay as they are. Where a shop has chosen nothing, nothing is due. Concentration is not among
 * them: a sump whose strength is to be read stands on the list itself.
 */
export const dueTests: DueSource = async (parts, question) => {
  const shop = await readGuidedShop(parts, { until: question.until })
  const due: DueSump[] = []
  const findings: Due[] = []
  for (const sump of shop.sumps) {
    const asked = await questionOf(parts.journal, shop, sump, { ms: question.at.getTime(), reader: question.reader })
    findings.push(...findingsOfSump(asked).flatMap((finding) => findingDue(finding, sump, shop)))
    if (!saysAnything(shop.guidance)) continue
    const tests = testsOfSump(asked).filter(({ test, isDue }) => isDue && test !== 'concentration')
    if (tests.length > 0) due.push({ sump, tests })
  }
  const looks = due.filter(({ tests }) => tests.some(({ test }) => test === 'senses'))
  return [
    ...findings,
    ...looksDue(looks),
    ...testsDue(due.flatMap(withoutSenses)),
    ...(await waterDue(parts, question, shop)),
  ]
}

interface DueSump {
  sump: Sump
  tests: SumpTest[]
}

const withoutSenses = ({ sump, tests }: DueSump): DueSump[] => {
  const rest = tests.filter(({ test }) => test !== 'senses')
  return rest.length === 0 ? [] : [{ sump, tests: rest }]
}

/** One line for the whole walk; of a single sump a line that one tap finishes. */
function looksDue(due: readonly DueSump[]): Due[] {
  const [first] = due
  if (first === undefined) return []
  const test = first.tests.find(({ test }) => test === 'senses')!
  const isOne = due.length === 1
  return [
    {
      ...shopDue(isOne ? first.sump : null),
      key: isOne ? `test:${first.sump.id}:senses` : 'test:round:senses',
      headline: isOne
        ? say('Look at {name} and smell it', { name: first.sump.name })
        : say('{count, plural, one {Look at # sump and smell it} other {Look at # sumps and smell them}}', {
            count: due.length,
          }),
      why: isOne ? test.why : say('{names}. {why}', { names: namesOf(due), why: test.why }),
      dueOn: earliest(due),
      consequence: 6,
      cautions: sayCautions(['rottenEggGas']),
      page: isOne ? `/sumps/${encodeURIComponent(first.sump.id)}#tests` : '/tests',
      finish: isOne ? { kind: 'observation', signs: [] } : null,
    },
  ]
}

/** One line a sump; one for the round where many have the same tests due. */
function testsDue(due: readonly DueSump[]): Due[] {
  const sets = Map.groupBy(due, ({ tests }) => tests.map(({ test }) => test).join('+'))
  return [...sets].flatMap(([set, sumps]) => (sumps.length >= manySumps ? [roundDue(set, sumps)] : sumps.map(sumpDue)))
}

function sumpDue({ sump, tests }: DueSump): Due {
  const names = tests.map(({ test }) => test)
  return {
    ...shopDue(sump),
    key: `test:${sump.id}:${names.join('+')}`,
    headline: sayTestsDue(names, sump.name),
    why: tests.map(({ why }) => why).join(' '),
    dueOn: earliest([{ sump, tests }]),
    consequence: consequenceOf(names),
    page: `/sumps/${encodeURIComponent(sump.id)}#tests`,
  }
}

function roundDue(set: string, sumps: readonly DueSump[]): Due {
  const tests = sumps[0]!.tests
  const names = tests.map(({ test }) => test)
  return {
    ...shopDue(null),
    key: `test:round:${set}`,
    headline: sayTestsDue(names, say('{count, plural, one {# sump} other {# sumps}}', { count: sumps.length })),
    why: say('{names}. {why}', { names: namesOf(sumps), why: tests.map(({ why }) => why).join(' ') }),
    dueOn: earliest(sumps),
    consequence: consequenceOf(names),
    page: '/tests',
  }
}

const shopDue = (sump: Sump | null) => ({
  kind: 'test' as const,
  sump: sump?.id ?? null,
  about: sump === null ? { kind: 'shop' } : null,
  name: sump?.name ?? say('The round'),
  exempt: false,
  cautions: [] as string[],
  finish: null,
})

/** What a rule sets by law comes before what is good to know. */
const consequenceOf = (tests: readonly CalendarTest[]) =>
  tests.includes('nitrite') || tests.includes('bacteria') ? 5 : 6

const earliest = (due: readonly DueSump[]): string =>
  due.flatMap(({ tests }) => tests.map(({ dueOn }) => dueOn!)).sort()[0]!

const shownNames = 5

/** "Mill 1, Mill 2, Lathe 3 and 4 more". */
function namesOf(due: readonly DueSump[]): string {
  const names = due.map(({ sump }) => sump.name)
  if (names.length <= shownNames + 1) return sayList(names)
  const more = say('{count, plural, one {# more} other {# more}}', { count: names.length - shownNames })
  return sayList([...names.slice(0, shownNames), more])
}

/** Nitrite over its limit and a crash of pH are neither capped nor put off. */
function findingDue(finding: Finding, sump: Sump, { clock }: GuidedShop): Due[] {
  const { about, urgency, sentence, source, entry, at } = finding
  if (urgency === 'note') return []
  const isNow = urgency === 'act-now'
  return [
    {
      ...shopDue(sump),
      key: `finding:${about}:${entry}`,
      headline: say(headlines[about], { name: sump.name }),
      why: source === null ? sentence : say('{sentence} By {source}.', { sentence, source }),
      dueOn: dayText(Math.floor(clock.at(Date.parse(at)))),
      consequence: isNow ? 1 : 3,
      exempt: isNow,
      cautions: sayCautions(cautionsOf[about]),
      page: `/sumps/${encodeURIComponent(sump.id)}#tests`,
    },
  ]
}

const headlines = {
  nitrite: message('Nitrite is over its limit in {name}'),
  ph: message('pH has fallen too far in {name}'),
  bacteria: message('The slide is poor for {name}'),
} as const
const cautionsOf = {
  nitrite: ['nitriteWithAmines'],
  ph: ['phCauseFirst', 'acidOrBleach'],
  bacteria: ['biocideDoesNotRepair', 'biocideByLabel', 'mist'],
} as const

/** Make-up water whose nitrate is over the limit of the chosen guidance, with how much of a water without any brings it back. */
async function waterDue({ journal }: BookParts, { until }: DueQuestion, shop: GuidedShop): Promise<Due[]> {
  const limit = nitrateLimit(shop)
  if (limit === null) return []
  const due: Due[] = []
  const withdrawn = withdrawnBy(await journal.voids())
  for (const water of shop.things.water.values()) {
    const found = await lastNitrate(journal, water, { until: until.toISOString(), withdrawn })
    if (found === null || found.nitrate <= limit.high) continue
    const parts = alligation({
      first: share(found.nitrate, found.nitrate),
      second: 0,
      wanted: share(limit.high, found.nitrate),
    })
    const figures = { found: sayNumber(found.nitrate, 0), limit: sayNumber(limit.high, 0), source: limit.source }
    const why = [say('{found} mg/L; at most {limit} mg/L by {source}.', figures)]
    if (parts.outcome === 'parts') {
      const percent = sayNumber(100 * parts.second, 1)
      why.push(
        say('Blended with at least {percent} % of water without nitrate it comes to {limit} mg/L.', {
          percent,
          limit: figures.limit,
        }),
      )
    }
    due.push({
      ...shopDue(null),
      about: { kind: 'water', id: water.id },
      key: `water-nitrate:${water.id}`,
      name: water.name,
      headline: say('{water} has more nitrate than make-up water may have', { water: water.name }),
      why: why.join(' '),
      dueOn: dayText(Math.floor(shop.clock.at(found.ms ?? until.getTime()))),
      consequence: 4,
      page: '/water/blend',
    })
  }
  return due
}

/** As percent of the nitrate found, since shares are what a blend is reckoned in. */
const share = (nitrate: number, of: number) => (100 * nitrate) / of

function nitrateLimit({ guidance }: GuidedShop): { high: number; source: string } | null {
  const rule = ruleOf(guidance, 'waterNitrate', 'ends')
  const own = guidance.own.waterNitrate?.high
  const guided = rule?.says.high
  if (guided === undefined && own === undefined) return null
  if (guided === undefined || (own !== undefined && own < guided))
    return { high: own!, source: say('the shop’s own values') }
  return { high: guided, source: sayPassage(rule!.rule.source) }
}

/** Its last analysis that found nitrate, else what the water is said to have. */
async function lastNitrate(
  journal: BookParts['journal'],
  water: Water,
  { until, withdrawn }: { until: string; withdrawn: ReadonlySet<string> },
): Promise<{ nitrate: number; ms: number | null } | null> {
  const entries = await journal.entries({
    about: { kind: 'water', id: water.id },
    kinds: ['analysis'],
    order: 'time',
    until,
  })
  const found = entries
    .filter(({ id }) => !withdrawn.has(id))
    .map(({ body, at }) => ({ at, nitrate: (JSON.parse(body) as EntryOf<'analysis'>).nitrate }))
    .findLast(({ nitrate }) => nitrate !== undefined)
  if (found?.nitrate !== undefined) return { nitrate: found.nitrate, ms: Date.parse(found.at) }
  return water.nitrate === undefined ? null : { nitrate: water.nitrate, ms: null }
}
