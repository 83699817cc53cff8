import { type GuidanceRule, type GuidedTest, guidedTests, type RuleTopic, sayEdition, topicOf } from './pack.ts'
import { guidancePacks } from './packs/index.ts'

/** One column of the comparison. */
export interface ComparedEdition {
  pack: string
  edition: string
  name: string
}

/** What every edition says of one thing; null where we found nothing in it. */
export interface ComparedTopic {
  test: GuidedTest
  topic: RuleTopic
  /** In the order of the editions. */
  rules: (GuidanceRule | null)[]
  /** Whether two of those that speak of it say different things. */
  differs: boolean
}

/**
 * The packs side by side, edition by edition.
 *
 * @example comparedPacks().topics.find(({ test, topic }) => test === 'bacteria' && topic === 'classes').differs // true
 */
export function comparedPacks(): { editions: ComparedEdition[]; topics: ComparedTopic[] } {
  const all = guidancePacks.flatMap((pack) => pack.editions.map((edition) => ({ pack, edition })))
  const topics = new Map<string, ComparedTopic>()
  for (const [column, { edition }] of all.entries()) {
    for (const rule of edition.rules) {
      const topic = topicOf(rule.says)
      const key = `${rule.test} ${topic}`
      const row = topics.get(key) ?? { test: rule.test, topic, rules: all.map(() => null), differs: false }
      row.rules[column] = rule
      topics.set(key, row)
    }
  }
  return {
    editions: all.map(({ pack, edition }) => ({
      pack: pack.id,
      edition: edition.id,
      name: sayEdition(pack, edition),
    })),
    topics: [...topics.values()]
      .map((row) => ({ ...row, differs: new Set(row.rules.flatMap((rule) => figureOf(rule))).size > 1 }))
      .sort((a, b) => guidedTests.indexOf(a.test) - guidedTests.indexOf(b.test)),
  }
}

const figureOf = (rule: GuidanceRule | null): string[] => (rule === null ? [] : [JSON.stringify(rule.says)])
