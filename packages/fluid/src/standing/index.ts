export { titrationDoubt, usualResolution, volumeDoubt } from './doubts.ts'
export { type SumpEvent, type SumpStanding, standingAfter } from './standing.ts'
