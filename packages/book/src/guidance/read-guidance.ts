import {
  comparedPacks,
  type GuidanceRule,
  guidancePacks,
  ownPack,
  type Reader,
  say,
  sayAction,
  sayRule,
  saySource,
  sayTest,
  sayTopic,
  upperFirst,
} from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import type { GuidanceAnswer, RuleLine } from './answer-types.ts'
import { guidedInterval, ownInterval, shopGuidance } from './shop-guidance.ts'

/** What guidance there is and what the shop goes by. */
export async function readGuidance(
  { things: readThings }: Pick<BookParts, 'things'>,
  { at, reader = {} }: { at: Date; reader?: Partial<Reader> },
): Promise<GuidanceAnswer> {
  const things = (await readThings()).at(at.toISOString())
  const guidance = shopGuidance(things)
  const { pack = null, edition = null } = things.shop.guidance ?? {}
  const line = (rule: GuidanceRule): RuleLine => ({
    id: rule.id,
    test: rule.test,
    name: upperFirst(sayTest(rule.test)),
    text: sayRule(rule.says, reader),
    action: sayAction(rule, reader),
    binding: rule.binding,
    source: saySource(rule.source, reader),
    tag: rule.source.tag,
  })
  const { editions, topics } = comparedPacks()
  return {
    chosen: { outcome: guidance.chosen.outcome, pack, edition, name: guidance.name },
    own: guidance.own,
    refused: refusedOf(guidance, things.shop.readEveryDays ?? null),
    ownPack,
    packs: guidancePacks.map(({ id, name, editions: all }) => ({
      id,
      name: say(name),
      editions: all.map((one) => ({ id: one.id, name: say(one.name), rules: one.rules.map(line) })),
    })),
    comparison: {
      editions,
      topics: topics.map(({ test, topic, rules, differs }) => ({
        name: `${upperFirst(sayTest(test))}: ${sayTopic(topic)}`,
        differs,
        says: rules.map((rule) => (rule === null ? null : line(rule))),
      })),
    },
  }
}

function refusedOf(guidance: ReturnType<typeof shopGuidance>, readEveryDays: number | null): GuidanceAnswer['refused'] {
  const tests = ['senses', 'concentration', 'ph', 'nitrite', 'bacteria', 'hardness'] as const
  return tests.flatMap((test) => {
    const own = test === 'concentration' ? readEveryDays : ownInterval(guidance, test)
    const { days, calm } = guidedInterval(guidance, test)
    const longest = calm?.calm.longest ?? days
    return own !== null && longest !== null && own > longest
      ? [{ name: upperFirst(sayTest(test)), own, guidance: longest }]
      : []
  })
}
