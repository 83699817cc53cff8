// What a recipe on a round needs, as the browser gets it; bundled by round-bundle.ts to be weighed.
export { advise, concentrationFromBrix, readQuantity, standingAfter, volumeAt } from '../packages/fluid/src/index.ts'
