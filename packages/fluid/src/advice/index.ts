export { type Advice, advise } from './advise.ts'
export type { BenchContainer, RecipeBench } from './bench.ts'
export { trueLitres, trueMarks } from './true-marks.ts'
export { type StandingToRead, type WeighedReading, weighReading } from './weigh-reading.ts'
