export { type RecipeContext, type RecipeWords, sayAlternative, sayCount, sayList, sayRecipe } from './recipe.ts'
export { type Reader, sayConcentration, sayNumber, sayPercent, sayStrength, sayVolume } from './units.ts'
