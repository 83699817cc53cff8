export {
  type BrixReading,
  type BrixScale,
  brixFromConcentration,
  type Concentration,
  type ConcentrationToRead,
  concentrationFromBrix,
  type OffChart,
} from './concentration.ts'
export { brixFromChart, type ChartPoint, type ProductChart, percentFromChart } from './product-chart.ts'
export { type DatedFactor, type KnownScales, type ScaleInUse, scaleOn } from './scale-on.ts'
export { type BrixAt20, brixAt20, type RawBrix, sucroseIndexAt20 } from './temperature-correction.ts'
export { waterIndex } from './water-index.ts'
