import {
  type CalmRule,
  type ChosenEdition,
  chosenEdition,
  type GuidanceRule,
  type GuidedTest,
  type RuleSays,
  type SampleMethod,
  type SampleWindow,
  sampleWindows,
  say,
  sayEdition,
} from '@sumpbook/fluid'
import type { Guidance } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'

/** What a shop goes by: the edition it has chosen, and its own values. */
export interface ShopGuidance {
  chosen: ChosenEdition
  own: NonNullable<Guidance['own']>
  forWork: NonNullable<Guidance['forWork']>
  /** Rules of the edition; none where none is chosen. */
  rules: readonly GuidanceRule[]
  /** "HSE, page current in 2026"; what the choice is called. */
  name: string
}

export function shopGuidance({ shop: { guidance = {} } }: Things): ShopGuidance {
  const chosen = chosenEdition(guidance)
  return {
    chosen,
    own: guidance.own ?? {},
    forWork: guidance.forWork ?? [],
    rules: chosen.outcome === 'chosen' ? chosen.edition.rules : [],
    name: nameOf(chosen),
  }
}

function nameOf(chosen: ChosenEdition): string {
  switch (chosen.outcome) {
    case 'chosen':
      return sayEdition(chosen.pack, chosen.edition)
    case 'own':
      return say('the shop’s own values alone')
    case 'none':
      return say('none chosen')
    case 'unknown':
      return say('“{edition}”, which this version does not have', {
        edition: [chosen.pack, chosen.edition].filter((part) => part !== null).join(', '),
      })
  }
}

/** Whether a shop has said anything that its sumps are tested by. */
export const saysAnything = ({ rules, own }: ShopGuidance): boolean => rules.length > 0 || Object.keys(own).length > 0

/** The rule of one kind about a test, with its figure; null without one. */
export function ruleOf<Kind extends RuleSays['kind']>(
  { rules }: ShopGuidance,
  test: GuidedTest,
  kind: Kind,
): { rule: GuidanceRule; says: Extract<RuleSays, { kind: Kind }> } | null {
  for (const rule of rules) {
    if (rule.test === test && rule.says.kind === kind) {
      return { rule, says: rule.says as Extract<RuleSays, { kind: Kind }> }
    }
  }
  return null
}

/** The interval that guidance sets for a test before any result is looked at, and the rule behind one that may grow. */
export function guidedInterval(
  guidance: ShopGuidance,
  test: GuidedTest,
): { days: number | null; calm: CalmRule | null; rule: GuidanceRule | null } {
  const plain = ruleOf(guidance, test, 'every')
  if (plain !== null) return { days: plain.says.days, calm: null, rule: plain.rule }
  const growing = ruleOf(guidance, test, 'every-unless-calm')
  if (growing === null) return { days: null, calm: null, rule: null }
  return { days: growing.says.days, calm: growing.says, rule: growing.rule }
}

/** The days that a shop sets for a test by itself. */
export function ownInterval({ own }: ShopGuidance, test: GuidedTest): number | null {
  const tested = (own as Record<string, { everyDays?: number } | undefined>)[test]
  return tested?.everyDays ?? null
}

/** The hours in which a sample is read: the shop's own for slides, by their instructions, else the usual ones. */
export function windowOf({ own }: ShopGuidance, method: SampleMethod): SampleWindow {
  const usual = sampleWindows[method]
  if (method !== 'dip slide') return usual
  const { readFromHours = usual.fromHours, readToHours = usual.toHours } = own.bacteria ?? {}
  return readFromHours < readToHours ? { fromHours: readFromHours, toHours: readToHours } : usual
}
