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
export {
  type CounterFlow,
  counterFlowDilution,
  type Flush,
  flushedFraction,
  type Rinse,
  type RinseResult,
  rinse,
} from './rinse.ts'
