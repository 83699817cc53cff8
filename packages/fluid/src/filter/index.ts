export {
  assignBelief,
  type Belief,
  blur,
  copyBelief,
  copyFirst,
  dropBelief,
  largestSize,
  newBelief,
  renew,
} from './belief.ts'
export { learn, learnEach, learnMoments, spreadOf } from './learn.ts'
export { mergeBeliefs } from './merge.ts'
export { type SmoothedStop, smooth } from './smooth.ts'
export { shake, spread } from './spread.ts'
export { newTape, stopHere, type Tape } from './tape.ts'
