/** What answers about jobs and upkeep hold, for who reads them. */

export type { ProposedTask, Upkeep, UpkeepLine } from '../upkeep/upkeep-types.ts'
export type { Claim, Claimed, ClaimedPour, LostClaim } from './claim-types.ts'
export type {
  CleanoutPlan,
  Job,
  JobLine,
  JobStep,
  Jobs,
  PlannedStep,
  SheetKind,
  SideBySide,
  Signed,
} from './job-types.ts'
