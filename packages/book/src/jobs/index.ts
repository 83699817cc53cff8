export type { Claim, LostClaim } from './claim-types.ts'
export { dueJobs } from './due-jobs.ts'
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
export { readClaims } from './read-claims.ts'
export { readCleanoutPlan } from './read-cleanout-plan.ts'
export { readJob, readJobs } from './read-jobs.ts'
export { readSideBySide } from './read-side-by-side.ts'
