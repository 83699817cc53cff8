import { type CautionId, sayCautions } from '../cautions/cautions.ts'
import type { Dispensed } from '../recipe/containers.ts'
import type { Alternative, Pour, Reason, Recipe } from '../recipe/recipe.ts'
import type { Way } from '../recipe/ways.ts'
import { message, say } from '../words/index.ts'
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

/** A recipe in sentences, amounts in the reader's units. */
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
  const values = { way: headlineOf(alternative, context), outcome: outcomeWords(alternative, context) }
  return alternative.because.includes('above-mark')
    ? say('Or, above the mark but under the brim: {way}. {outcome}', values)
    : say('Or: {way}. {outcome}', values)
}

/** A way to pour in one sentence: "With what is ready: 45 L at 5 % from the mixer and 5 L of water; then 6.0 %." */
export function sayWay({ parts, result, inBand }: Way, context: RecipeContext): string {
  const poured = sayList(
    parts.map(({ kind, id, volume, strength }) => {
      const amount = sayVolume(volume, context)
      if (kind === 'water') return say('{volume} of water', { volume: amount })
      const mix = { volume: amount, strength: sayStrength(strength, context) }
      if (kind === 'premix') return say('{volume} at {strength} of the premix {name}', { ...mix, name: id ?? '' })
      return kind === 'mixer'
        ? say('{volume} at {strength} from the mixer', mix)
        : say('{volume} at {strength} mixed in buckets', mix)
    }),
  )
  const values = { poured, strength: sayPercent(result.concentration, context) }
  return inBand
    ? say('With what is ready: {poured}; then {strength}.', values)
    : say('With what is ready: {poured}; then {strength}, outside its band.', values)
}

/** Reasons in sentences; those that say nothing new are left out. */
export const sayReasons = (because: readonly Reason[]): string[] =>
  because.map((reason) => reasonWords[reason]).flatMap((sentence) => (sentence === null ? [] : [say(sentence)]))

function headlineOf(
  { action, add, drawOff, because }: Pick<Recipe, 'action' | 'add' | 'drawOff' | 'because'>,
  context: RecipeContext,
): string {
  const out = sayVolume(drawOff, context)
  const poured = add === null ? null : pourValues(add, context)
  switch (action) {
    case 'top-up':
      return say('Add {volume} at {strength}', poured!)
    case 'water-only':
      return add!.strength === 0
        ? say('Pour {volume} of {water}, no concentrate', { ...poured!, water: waterName(add!, context) })
        : say('Add {volume} at {strength}, the leanest mix this fluid allows', poured!)
    case 'draw-off':
      return poured === null
        ? say('Draw off {out}', { out })
        : say('Draw off {out}, then add {volume} at {strength}', { ...poured, out })
    case 'change':
      return say('Change the charge: drain it, then fill {volume} at {strength}', poured!)
    case 'none':
      return say('Nothing to pour')
    case 'refuse':
      return say('No water and no mix into a straight oil')
    case 'measure-first':
      return say(measureWords(because))
  }
}

function measureWords(because: readonly Reason[]): string {
  if (because.includes('doubt')) return message('Read again before pouring')
  if (because.includes('mark-unknown')) return message('Tell the book its full mark first')
  if (because.includes('target-unknown')) return message('Tell the book the target of its fluid first')
  if (because.includes('factor-unknown')) return message("Tell the book the fluid's refractometer factor first")
  if (because.includes('level-unknown')) return message('Read the level first')
  if (because.includes('strength-unknown')) return message('Read the refractometer first')
  if (because.includes('volume-too-uncertain')) return message('Measure the level before pouring')
  return message('Measure the strength before pouring')
}

const pourValues = (add: Pour, context: RecipeContext) => ({
  volume: sayVolume(add.volume, context),
  strength: sayStrength(add.strength, context),
})

function howOf({ add, action }: Recipe, context: RecipeContext): string {
  if (add === null) return action === 'draw-off' ? say('Down to the full mark.') : ''
  const buckets = bucketWords(context)
  if (add.concentrate === 0) return buckets
  const { part, rest } = sayParts(add.volume, add.concentrate, context)
  const mixed = say('{rest} of {water}, then {part} of concentrate into it.', {
    rest,
    part,
    water: waterName(add, context),
  })
  return buckets === '' ? mixed : `${mixed} ${buckets}`
}

/** "In 12 L buckets: 2 full and 7 L of water, 7 L concentrate last; as measured that is 18.4 %." */
function bucketWords({ dispensed, ...reader }: RecipeContext): string {
  if (dispensed == null || dispensed.volume === 0) return ''
  const { fullWater, restWater, concentrate, container } = dispensed
  const water = {
    size: sayVolume(container.capacity, reader),
    water: fullWater > 0 ? (restWater > 0 ? 'both' : 'full') : restWater > 0 ? 'rest' : 'none',
    full: fullWater,
    rest: sayVolume(restWater, reader),
  }
  return concentrate > 0
    ? say(
        'In {size} buckets: {water, select, both {{full, plural, other {# full}} and {rest} of water} full {{full, plural, other {# full}} of water} rest {{rest} of water} other {no water}}, {concentrate} concentrate last; as measured that is {strength}.',
        {
          ...water,
          concentrate: sayVolume(concentrate, reader),
          strength: sayPercent(dispensed.strength, reader),
        },
      )
    : say(
        'In {size} buckets: {water, select, both {{full, plural, other {# full}} and {rest} of water} full {{full, plural, other {# full}} of water} rest {{rest} of water} other {no water}}.',
        water,
      )
}

function waterName(add: Pour, { waterNames = {} }: RecipeContext): string {
  const [chosen] = add.waters
  return chosen === undefined ? say('water') : lowerFirst(waterNames[chosen.id] ?? chosen.id)
}

function outcomeWords(
  { result, action, drawOff }: Pick<Recipe, 'result' | 'action' | 'drawOff'>,
  context: RecipeContext,
): string {
  if (result === null) return ''
  const strength = sayPercent(result.concentration, context)
  if (action === 'none') return say('It stands at {strength}.', { strength })
  const isLevel =
    context.fillVolume !== undefined && Math.abs(result.volume - context.fillVolume) <= 0.005 * context.fillVolume
  const stands = isLevel
    ? say('It will then stand at {strength}, level at the mark.', { strength })
    : say('It will then stand at {strength}, with {volume} in it.', {
        strength,
        volume: sayVolume(result.volume, context),
      })
  return drawOff > 0 ? `${stands} ${say('{out} become waste.', { out: sayVolume(drawOff, context) })}` : stands
}

const reasonWords: Record<Reason, string | null> = {
  'straight-oil': message('A straight oil is used as delivered: water in it rusts and spoils it.'),
  doubt: message('A record of this sump does not fit; no recipe until it is settled.'),
  'interval-wider-than-band': message('The strength is known less well than the band is wide.'),
  'volume-too-uncertain': message('The volume is so uncertain that a pour could run over the brim.'),
  'level-unknown': message('The level is not known well enough to pour by.'),
  'strength-unknown': message('Nobody has written down a strength yet.'),
  'mark-unknown': message('How many litres this sump holds at its full mark is not known.'),
  'target-unknown': message('What strength this fluid is kept at is not known.'),
  'factor-unknown': message('What a degree Brix of this fluid means in percent is not known.'),
  'below-suction': message("The level is under the pumps' suction: level first, strength after."),
  lean: message('Under its band.'),
  rich: message('Above its band.'),
  'in-band': null,
  'above-mark': message('The level is above the full mark.'),
  'above-brim': message('The level is above the brim.'),
  'held-at-strongest': message('The strongest pour to the mark stays under the target.'),
  'held-at-leanest': message('The leanest pour to the mark stays above the target.'),
  'still-lean': message('After this fill it is still under its band: read again, then decide.'),
  'still-rich': message('After this fill it is still above its band: read again, then decide.'),
  'kept-below-brim': message('The fill ends under the mark, since the volume may be more than thought.'),
  'neat-concentrate': null,
  'only-softened-water': message('Only softened water is on hand: its sodium and chloride stay in the sump.'),
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
