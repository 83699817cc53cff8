import type { GuidanceEdition, GuidancePack } from '../pack.ts'
import { germany } from './germany.ts'
import { unitedKingdom } from './united-kingdom.ts'
import { unitedStates } from './united-states.ts'

/** The packs that come with the book. None is chosen for anybody. */
export const guidancePacks: readonly GuidancePack[] = [germany, unitedKingdom, unitedStates]

/** The name under which a shop says that its own values are all it goes by. */
export const ownPack = 'own'

/** A pack's edition, or that there is none: nothing is taken in its place. */
export type ChosenEdition =
  | { outcome: 'chosen'; pack: GuidancePack; edition: GuidanceEdition }
  /** The shop's own values alone. */
  | { outcome: 'own' }
  /** Nobody chose. */
  | { outcome: 'none' }
  /** What was chosen is not among those of this version. */
  | { outcome: 'unknown'; pack: string; edition: string | null }

/**
 * The edition that a shop has chosen. A pack without an edition is its newest one only where it has no other.
 *
 * @example chosenEdition({ pack: 'united-kingdom', edition: '2012' }).edition.name // 'page of November 2012'
 */
export function chosenEdition(
  choice: { pack?: string | undefined; edition?: string | undefined } | null,
): ChosenEdition {
  if (choice?.pack === undefined) return { outcome: 'none' }
  if (choice.pack === ownPack) return { outcome: 'own' }
  const pack = guidancePacks.find(({ id }) => id === choice.pack)
  const edition =
    choice.edition === undefined && pack?.editions.length === 1
      ? pack.editions[0]
      : pack?.editions.find(({ id }) => id === choice.edition)
  if (pack === undefined || edition === undefined)
    return { outcome: 'unknown', pack: choice.pack, edition: choice.edition ?? null }
  return { outcome: 'chosen', pack, edition }
}
