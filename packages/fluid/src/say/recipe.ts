import { type CautionId, sayCautions } from '../cautions/cautions.ts'
import type { Dispensed } from '../recipe/containers.ts'
import type { Alternative, Pour, Reason, Recipe } from '../recipe/recipe.ts'
import type { Way } from '../recipe/ways.ts'
import { lowerFirst, sayList } from './phrases.ts'
import { type Reader, sayParts, sayPercent, sayStrength, sayVolume } from './units.ts'

/** What a recipe's sentences need to know beyond the recipe. */
export interface RecipeContext extends Reader {
  /** Names of the waters by id; an id without a name is shown as it is. */
  waterNames?: Readonly<Record<string, string>>
  /** The same pour, measured out in buckets. */
  dispensed?: Dispensed | null
  /** The full mark, to say whether the level will stand there. */
  fillVolume?: number
}

/** A recipe in words, in the order in which it is read. */
export interface RecipeWords {
  /** What to do, in one breath: "Add 38 L at 18 %". */
  headline: string
  /** How: amounts, order, buckets. Empty where there is nothing to pour. */
  how: string
  /** Where it leaves the sump. Empty where that cannot be said. */
  outcome: string
  /** Why, a sentence each. */
  because: string[]
  /** What to mind, a sentence each. */
  cautions: string[]
}

/** A recipe in English sentences, amounts in the reader's units. */
export function sayRecipe(recipe: Recipe, context: RecipeContext): RecipeWords {
  return {
    headline: headlineOf(recipe, context),
    how: howOf(recipe, context),
    outcome: outcomeWords(recipe, context),
    because: sayReasons(recipe.because),
    cautions: cautionsOf(recipe),
  }
}

/** Another way, in one sentence with what follows from it. */
export function sayAlternative(alternative: Alternative, context: RecipeContext): string {
  const words = `${headlineOf(alternative, context)}. ${outcomeWords(alternative, context)}`
  return alternative.because.includes('above-mark') ? `Or, above the mark but under the brim: ${words}` : `Or: ${words}`
}

/** A way to pour in one sentence: "45 L of mix at 5 % from the premix into 5 L of water: 6.0 %." */
export function sayWay({ parts, result, inBand }: Way, context: RecipeContext): string {
  const poured = parts.map(({ kind, id, volume, strength }) => {
    const amount = sayVolume(volume, context)
    if (kind === 'water') return `${amount} of water`
    const mix = `${amount} at ${sayStrength(strength, context)}`
    return kind === 'premix'
      ? `${mix} of the premix ${id}`
      : kind === 'mixer'
        ? `${mix} from the mixer`
        : `${mix} mixed in buckets`
  })
  return `With what is ready: ${sayList(poured)}; then ${sayPercent(result.concentration, context)}${inBand ? '' : ', outside its band'}.`
}

/** Reasons in sentences; those that say nothing new are left out. */
export const sayReasons = (because: readonly Reason[]): string[] =>
  because.map((reason) => reasonWords[reason]).filter((sentence) => sentence !== '')

function headlineOf(
  { action, add, drawOff, because }: Pick<Recipe, 'action' | 'add' | 'drawOff' | 'because'>,
  context: RecipeContext,
): string {
  const out = sayVolume(drawOff, context)
  switch (action) {
    case 'top-up':
      return `Add ${pourWords(add!, context)}`
    case 'water-only':
      return add!.strength === 0
        ? `Pour ${sayVolume(add!.volume, context)} of ${waterName(add!, context)}, no concentrate`
        : `Add ${pourWords(add!, context)}, the leanest mix this fluid allows`
    case 'draw-off':
      return add === null ? `Draw off ${out}` : `Draw off ${out}, then add ${pourWords(add, context)}`
    case 'change':
      return `Change the charge: drain it, then fill ${pourWords(add!, context)}`
    case 'none':
      return 'Nothing to pour'
    case 'refuse':
      return 'No water and no mix into a straight oil'
    case 'measure-first':
      return measureWords(because)
  }
}

function measureWords(because: readonly Reason[]): string {
  if (because.includes('doubt')) return 'Read again before pouring'
  if (because.includes('mark-unknown')) return 'Tell the book its full mark first'
  if (because.includes('target-unknown')) return 'Tell the book the target of its fluid first'
  if (because.includes('factor-unknown')) return "Tell the book the fluid's refractometer factor first"
  if (because.includes('level-unknown')) return 'Read the level first'
  if (because.includes('strength-unknown')) return 'Read the refractometer first'
  if (because.includes('volume-too-uncertain')) return 'Measure the level before pouring'
  return 'Measure the strength before pouring'
}

const pourWords = (add: Pour, context: RecipeContext) =>
  `${sayVolume(add.volume, context)} at ${sayStrength(add.strength, context)}`

function howOf({ add, action }: Recipe, context: RecipeContext): string {
  if (add === null) return action === 'draw-off' ? 'Down to the full mark.' : ''
  if (add.concentrate === 0) return bucketWords(context)
  const { part, rest } = sayParts(add.volume, add.concentrate, context)
  const buckets = bucketWords(context)
  return `${rest} of ${waterName(add, context)}, then ${part} of concentrate into it.${buckets === '' ? '' : ` ${buckets}`}`
}

/** "In buckets of 12 L: 2 full and 7 L of water, 7 L concentrate last; that pours 18.4 %." */
function bucketWords({ dispensed, ...reader }: RecipeContext): string {
  if (dispensed == null || dispensed.volume === 0) return ''
  const { fullWater, restWater, concentrate, container } = dispensed
  const rest = sayVolume(restWater, reader)
  const parts = [
    fullWater > 0 ? `${fullWater} full` : '',
    restWater > 0 ? (fullWater > 0 ? `and ${rest}` : rest) : '',
    'of water',
  ].filter((part) => part !== '')
  const last =
    concentrate > 0
      ? `, ${sayVolume(concentrate, reader)} concentrate last; as measured that is ${sayPercent(dispensed.strength, reader)}`
      : ''
  const size = sayVolume(container.capacity, reader)
  return `In ${size} buckets: ${fullWater === 0 && restWater === 0 ? 'no water' : parts.join(' ')}${last}.`
}

function waterName(add: Pour, { waterNames = {} }: RecipeContext): string {
  const [chosen] = add.waters
  return chosen === undefined ? 'water' : lowerFirst(waterNames[chosen.id] ?? chosen.id)
}

function outcomeWords(
  { result, action, drawOff }: Pick<Recipe, 'result' | 'action' | 'drawOff'>,
  context: RecipeContext,
): string {
  if (result === null) return ''
  const at = sayPercent(result.concentration, context)
  if (action === 'none') return `It stands at ${at}.`
  const level =
    context.fillVolume !== undefined && Math.abs(result.volume - context.fillVolume) <= 0.005 * context.fillVolume
  const waste = drawOff > 0 ? ` ${sayVolume(drawOff, context)} become waste.` : ''
  return `It will then stand at ${at}, ${level ? 'level at the mark' : `with ${sayVolume(result.volume, context)} in it`}.${waste}`
}

const reasonWords: Record<Reason, string> = {
  'straight-oil': 'A straight oil is used as delivered: water in it rusts and spoils it.',
  doubt: 'A record of this sump does not fit; no recipe until it is settled.',
  'interval-wider-than-band': 'The strength is known less well than the band is wide.',
  'volume-too-uncertain': 'The volume is so uncertain that a pour could run over the brim.',
  'level-unknown': 'The level is not known well enough to pour by.',
  'strength-unknown': 'Nobody has written down a strength yet.',
  'mark-unknown': 'How many litres this sump holds at its full mark is not known.',
  'target-unknown': 'What strength this fluid is kept at is not known.',
  'factor-unknown': 'What a degree Brix of this fluid means in percent is not known.',
  'below-suction': "The level is under the pumps' suction: level first, strength after.",
  lean: 'Under its band.',
  rich: 'Above its band.',
  'in-band': '',
  'above-mark': 'The level is above the full mark.',
  'above-brim': 'The level is above the brim.',
  'held-at-strongest': 'The strongest pour to the mark stays under the target.',
  'held-at-leanest': 'The leanest pour to the mark stays above the target.',
  'still-lean': 'After this fill it is still under its band: read again, then decide.',
  'still-rich': 'After this fill it is still above its band: read again, then decide.',
  'kept-below-brim': 'The fill ends under the mark, since the volume may be more than thought.',
  'neat-concentrate': '',
  'only-softened-water': 'Only softened water is on hand: its sodium and chloride stay in the sump.',
}

function cautionsOf({ action, add, drawOff, because }: Recipe): string[] {
  const ids: CautionId[] = []
  if (because.includes('below-suction')) ids.push('pumpsDrawAir')
  if (because.includes('neat-concentrate')) ids.push('neatConcentrate')
  if (add !== null && add.concentrate > 0) ids.push('concentrateLast')
  if (drawOff > 0) ids.push('drawnOffIsWaste')
  if (action === 'change') ids.push('lockOut')
  if (action !== 'none') ids.push('guidanceOnly')
  return sayCautions(ids)
}
