import {
  type Advice,
  advise,
  type Reader,
  type Recipe,
  type RecipeBench,
  type SumpEstimate,
  sayRecipe,
  trueMarks,
  volumeToPour,
} from '@sumpbook/fluid'
import type { EstimatedRecipe } from './answer-types.ts'

/** What the advice needs of an estimate; a strength of which no record tells is null. */
export interface AdvisedBy {
  now: Pick<SumpEstimate['now'], 'volume' | 'markVolume'> & {
    concentration: SumpEstimate['now']['concentration'] | null
  }
  doubts: readonly Pick<SumpEstimate['doubts'][number], 'open' | 'found'>[]
}

/**
 * What to pour by the estimate. Marks of a plate are carried over to what the sump truly holds: litres are poured, not shares of
 * a plate. While a record is in doubt there is no recipe.
 */
export function adviceBy({ now, doubts }: AdvisedBy, bench: RecipeBench, reader: Reader): Advice {
  const inLitres = trueMarks(bench, now.markVolume)
  const volume = volumeToPour(now.volume, now.markVolume, inLitres)
  const advice = advise({ volume, concentration: now.concentration }, inLitres, reader)
  const open = doubts.filter((doubt) => doubt.open)
  if (advice.recipe.action === 'refuse' || open.length === 0) return advice
  // Whoever saw the level at the pumps may be right.
  const isSeenLow = open.some(({ found }) => found.quantity === 'seen' && found.read < (bench.minVolume ?? 0))
  const recipe = withheld(isSeenLow || advice.recipe.because.includes('below-suction'))
  return { recipe, words: sayRecipe(recipe, reader), dispensed: null, alternatives: [] }
}

/** The same as the contract writes a recipe. */
export function recipeBy(estimate: AdvisedBy, bench: RecipeBench, reader: Reader): EstimatedRecipe {
  const { recipe, words, dispensed } = adviceBy(estimate, bench, reader)
  const { because, ...answer } = recipe
  const notes = [`${words.headline}.`, words.how, words.outcome, ...words.because].filter((sentence) => sentence !== '')
  return { ...answer, reasons: because, dispensed, notes, cautions: words.cautions }
}

const withheld = (isBelowSuction: boolean): Recipe => ({
  action: 'measure-first',
  add: null,
  drawOff: 0,
  result: null,
  alternatives: [],
  because: isBelowSuction ? ['doubt', 'below-suction'] : ['doubt'],
})
