export { type Advice, advise } from './advise.ts'
export type { BenchContainer, RecipeBench } from './bench.ts'
