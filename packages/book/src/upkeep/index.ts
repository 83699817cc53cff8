export { dueUpkeep } from './due-upkeep.ts'
export type { ProposedTask } from './proposals.ts'
export { readUpkeep, type Upkeep, type UpkeepLine } from './read-upkeep.ts'
