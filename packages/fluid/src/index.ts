/** The computation: pure functions over plain values, the same in the shop's phone, on its server and in a script. */
export type * from './quantities.ts'
export * from './recipe/index.ts'
export * from './say/index.ts'
export * from './standing/index.ts'
