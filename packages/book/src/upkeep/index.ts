export { dueUpkeep } from './due-upkeep.ts'
export { readUpkeep } from './read-upkeep.ts'
export type { ProposedTask, Upkeep, UpkeepLine } from './upkeep-types.ts'
