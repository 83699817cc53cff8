export { type Container, type Dispensed, dispense } from './containers.ts'
export { makePour, outcomeOf, type Standing, topUpWater } from './mix.ts'
export type {
  Action,
  Alternative,
  Outcome,
  Pour,
  Pourable,
  PourableWater,
  Reason,
  Recipe,
  SumpToPour,
} from './recipe.ts'
export { brimTolerance } from './system.ts'
export { topUp } from './top-up.ts'
export { type OnHand, type Part, pourWays, type Way } from './ways.ts'
