export {
  type Amount,
  alligation,
  amountToReach,
  type Blend,
  type FillUp,
  type FillUpStrength,
  fillUpStrength,
  type Parts,
  type TwoStrengths,
} from './alligation.ts'
export { type DrumBatches, type DrumQuestion, type DrumToUse, drumBatches, volumeFromConcentrate } from './drums.ts'
export { type Premix, type PremixNeed, premix } from './premix.ts'
export {
  type CounterFlow,
  counterFlowDilution,
  type Flush,
  flushedFraction,
  type Rinse,
  type RinseResult,
  rinse,
} from './rinse.ts'
