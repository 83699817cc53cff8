/** Books made by hand for the cases that a simulated shop has too seldom, each with what must come out. */
export { type ChangeOverExpected, changeOver, changeOverRunning } from './special/change-over.ts'
export { type ContradictoryExpected, calmBook, contradictory } from './special/contradictory.ts'
export { type InstrumentOffExpected, instrumentOff } from './special/instrument-off.ts'
export type { Near, Special } from './special/special.ts'
