import {
  advise,
  type Figure,
  type Reader,
  type Recipe,
  type RecipeBench,
  type SumpEstimate,
  sayRecipe,
} from '@sumpbook/fluid'

/** A recipe as `calc top-up` gives it. */
export interface EstimatedRecipe extends Omit<Recipe, 'because'> {
  reasons: Recipe['because']
  dispensed: ReturnType<typeof advise>['dispensed']
  notes: string[]
  cautions: string[]
}

/** A mark that nobody measured serves once it is known to this share of itself. */
const goodEnoughMark = 0.15

/**
 * What to pour by the estimate. Marks of a plate are carried over to what the sump truly holds: litres are poured, not shares of
 * a plate. While a record is in doubt there is no recipe.
 */
export function recipeBy({ now, doubts }: SumpEstimate, bench: RecipeBench, reader: Reader): EstimatedRecipe {
  const { recipe, words, dispensed } = advise(
    { volume: volumeBesideMark(now), concentration: now.concentration },
    benchInLitres(bench, now.markVolume),
    reader,
  )
  const inDoubt = doubts.some(({ open }) => open) && recipe.action !== 'refuse'
  const given = inDoubt ? withheld(recipe) : recipe
  const said = inDoubt ? sayRecipe(given, reader) : words
  const { because, ...answer } = given
  const notes = [`${said.headline}.`, said.how, said.outcome, ...said.because].filter((sentence) => sentence !== '')
  return { ...answer, reasons: because, dispensed: inDoubt ? null : dispensed, notes, cautions: said.cautions }
}

const withheld = ({ because }: Recipe): Recipe => ({
  action: 'measure-first',
  add: null,
  drawOff: 0,
  result: null,
  alternatives: [],
  because: ['doubt', ...because.filter((reason) => reason === 'below-suction')],
})

/** The shop's things in litres as the sump truly holds them. */
export function benchInLitres(bench: RecipeBench, mark: Figure): RecipeBench {
  const isGuess = bench.fillVolume === null
  if (isGuess && mark.sd > goodEnoughMark * mark.mean) return bench
  const fillVolume = mark.mean
  const scale = fillVolume / (bench.fillVolume ?? fillVolume)
  const capacity = bench.capacity === null ? null : Math.max(bench.capacity * scale, fillVolume)
  const minVolume = bench.minVolume === null ? null : Math.min(bench.minVolume * scale, fillVolume)
  return { ...bench, fillVolume, capacity, minVolume }
}

/**
 * The volume with the doubt that it has beside the mark: a plate that is off moves both, and a pour from level to mark takes
 * only the level's doubt, sd² = volume² · (sdV²/V² − sdM²/M²).
 */
function volumeBesideMark({ volume, markVolume }: SumpEstimate['now']): Figure {
  const share = (figure: Figure) => (figure.mean > 0 ? figure.sd / figure.mean : 0)
  const sd = volume.mean * Math.sqrt(Math.max(0, share(volume) ** 2 - share(markVolume) ** 2))
  return { ...volume, sd }
}
