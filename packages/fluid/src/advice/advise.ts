import { quantile95 } from '../interval90.ts'
import type { Figure } from '../quantities.ts'
import { type Dispensed, dispense } from '../recipe/containers.ts'
import type { Reason, Recipe } from '../recipe/recipe.ts'
import { brimTolerance } from '../recipe/system.ts'
import { topUp } from '../recipe/top-up.ts'
import { type RecipeContext, type RecipeWords, sayAlternative, sayRecipe } from '../say/recipe.ts'
import { type Reader, sayVolume } from '../say/units.ts'
import { say } from '../words/index.ts'
import type { RecipeBench } from './bench.ts'
import { nearestPour } from './nearest-pour.ts'

/** A recipe with its words and buckets. */
export interface Advice {
  recipe: Recipe
  words: RecipeWords
  /** The pour in the shop's buckets; null without a bucket or a pour. */
  dispensed: Dispensed | null
  /** Other ways, a sentence each. */
  alternatives: string[]
}

/** The recipe of one sump by what its records say; whatever is missing is asked for, never assumed. */
export function advise(
  standing: { volume: Figure | null; concentration: Figure | null },
  bench: RecipeBench,
  reader: Reader,
): Advice {
  const missing = missingFor(standing, bench)
  const recipe = missing.length > 0 ? measureFirst(missing) : recipeOf(standing.volume!, standing.concentration!, bench)
  const dispensed =
    recipe.add === null || bench.container === null
      ? null
      : dispense(recipe.add, bench.container, bench.measure ?? bench.container)
  const context: RecipeContext = {
    ...reader,
    waterNames: Object.fromEntries(bench.waters.map(({ id, name }) => [id, name])),
    dispensed,
    ...(bench.fillVolume === null ? {} : { fillVolume: bench.fillVolume }),
  }
  const alternatives =
    missing.includes('level-unknown') && missing.length === 1
      ? byLevel(standing.concentration!, bench, context)
      : recipe.alternatives.map((alternative) => sayAlternative(alternative, context))
  return { recipe, words: sayRecipe(recipe, context), dispensed, alternatives }
}

const measureFirst = (because: Reason[]): Recipe => ({
  action: 'measure-first',
  add: null,
  drawOff: 0,
  result: null,
  alternatives: [],
  because,
})

function missingFor(
  { volume, concentration }: { volume: Figure | null; concentration: Figure | null },
  bench: RecipeBench,
) {
  const missing: Reason[] = []
  if (bench.class === 'straight-oil') return missing
  if (bench.fillVolume === null) missing.push('mark-unknown')
  if (bench.target === null) missing.push('target-unknown')
  if (bench.brixFactor === null && bench.brixChart === null && concentration === null) missing.push('factor-unknown')
  else if (concentration === null) missing.push('strength-unknown')
  if (volume === null) missing.push('level-unknown')
  if (missing.length > 0 && concentration !== null && isWide(concentration, bench)) {
    missing.push('interval-wider-than-band')
  }
  return missing
}

const isWide = ({ sd }: Figure, { band }: RecipeBench) => band !== null && 2 * quantile95 * sd > band.high - band.low

function recipeOf(volume: Figure, concentration: Figure, bench: RecipeBench): Recipe {
  if (bench.class === 'straight-oil') return { ...measureFirst(['straight-oil']), action: 'refuse' }
  const brim = bench.capacity ?? 1.25 * bench.fillVolume!
  const { maxStrength, minStrength, waters } = bench
  const sump = {
    volume: Math.min(volume.mean, brimTolerance * brim),
    volumeSd: volume.sd,
    concentration: concentration.mean,
    concentrationSd: concentration.sd,
    fillVolume: bench.fillVolume!,
    ...(bench.capacity === null ? {} : { capacity: bench.capacity }),
    ...(bench.minVolume === null ? {} : { minVolume: bench.minVolume }),
    ...(bench.band === null ? {} : { band: bench.band }),
    ...(bench.class == null ? {} : { class: bench.class }),
  }
  const nearest = Math.min(maxStrength, Math.max(minStrength, bench.target!))
  const { low, high } = bench.band ?? { low: 0, high: 100 }
  const pourable = { maxStrength, minStrength, waters }
  if (nearest < low || nearest > high) return nearestPour({ ...sump, target: bench.target! }, pourable)
  return topUp({ ...sump, target: nearest }, pourable)
}

/** With the level unknown: what would be poured at a few levels, so that one look at the sump is enough. */
function byLevel(concentration: Figure, bench: RecipeBench, context: RecipeContext): string[] {
  return [0.9, 0.8, 0.7].map((share) => {
    const mean = share * bench.fillVolume!
    const recipe = recipeOf({ mean, sd: 0, low90: mean, high90: mean }, concentration, bench)
    const { headline, outcome } = sayRecipe(recipe, { ...context, dispensed: null })
    return say('With {volume} in it: {way}. {outcome}', {
      volume: sayVolume(mean, context),
      way: headline,
      outcome,
    })
  })
}
