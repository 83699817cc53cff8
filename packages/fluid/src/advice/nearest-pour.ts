import type { Percent } from '../quantities.ts'
import { makePour, outcomeOf } from '../recipe/mix.ts'
import type { Pourable, Reason, Recipe, SumpToPour } from '../recipe/recipe.ts'
import { systemOf } from '../recipe/system.ts'
import { topUp } from '../recipe/top-up.ts'

/**
 * The recipe where no strength that the shop can pour lies in the sump's band: the mixer is too weak for it, or the leanest
 * mix allowed too strong. What meets the target is poured where it can be (a rich sump is thinned by a weak mix as well); else
 * the sump is filled with the nearest that can be poured, and said to fall short. Nothing is drawn off for what falls short.
 *
 * @throws {RangeError} as {@link topUp}, but for the target
 */
export function nearestPour(sump: SumpToPour, pourable: Pourable): Recipe {
  const { maxStrength: strongest = 20, minStrength: leanest = 0, waters = [] } = pourable
  const { target } = sump
  const wanted = topUp(sump, {
    ...pourable,
    maxStrength: Math.max(strongest, target),
    minStrength: Math.min(leanest, target),
  })
  if (wanted.add === null || isPourable(wanted.add.strength, { leanest, strongest })) return wanted
  const standing = systemOf(sump)
  const room = wanted.add.volume - wanted.drawOff
  const strength = Math.min(strongest, Math.max(leanest, wanted.add.strength))
  const add = room > 1e-9 ? makePour(room, strength, waters) : null
  const result = outcomeOf(standing, 0, add)
  const because = [...sidesOf(sump, standing.concentration, strength < target), ...shortOf(sump, result.concentration)]
  const action = add === null ? 'none' : strength <= leanest ? 'water-only' : 'top-up'
  return { action, add, drawOff: 0, result, alternatives: [], because }
}

const isPourable = (strength: Percent, { leanest, strongest }: { leanest: Percent; strongest: Percent }) =>
  strength >= leanest - 1e-9 && strength <= strongest + 1e-9

function sidesOf({ band }: SumpToPour, concentration: Percent, isWeak: boolean): Reason[] {
  const { low = 0, high = 100 } = band ?? {}
  const side: Reason = concentration < low ? 'lean' : concentration > high ? 'rich' : 'in-band'
  return [side, isWeak ? 'held-at-strongest' : 'held-at-leanest']
}

function shortOf({ band }: SumpToPour, reached: Percent): Reason[] {
  const { low = 0, high = 100 } = band ?? {}
  if (reached < low) return ['still-lean']
  return reached > high ? ['still-rich'] : []
}
