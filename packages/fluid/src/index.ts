/** The computation: pure functions over plain values, the same in the shop's phone, on its server and in a script. */

export * from './advice/index.ts'
export { quantile95 } from './interval90.ts'
export * from './mixing/index.ts'
export type * from './quantities.ts'
export * from './recipe/index.ts'
export * from './refractometer/index.ts'
export { OutOfRange } from './require.ts'
export * from './say/index.ts'
export * from './standing/index.ts'
export * from './sump/index.ts'
export * from './units/index.ts'
export * from './vessel/index.ts'
