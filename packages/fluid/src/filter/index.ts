export { assignBelief, type Belief, blur, copyBelief, largestSize, newBelief, renew } from './belief.ts'
export { learn, learnMoments, spreadOf } from './learn.ts'
export { mergeBeliefs } from './merge.ts'
export { shake, spread } from './spread.ts'
