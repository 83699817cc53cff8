export { sayDoubt } from './doubt.ts'
export { lowerFirst, sayCount, sayList } from './phrases.ts'
export { type RecipeContext, type RecipeWords, sayAlternative, sayReasons, sayRecipe, sayWay } from './recipe.ts'
export { type Reader, sayConcentration, sayNumber, sayParts, sayPercent, sayStrength, sayVolume } from './units.ts'
