export { type SumpEvent, type SumpStanding, standingAfter } from './standing.ts'
