export { type Advice, advise } from './advise.ts'
export type { RecipeBench } from './bench.ts'
