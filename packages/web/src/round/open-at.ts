import type { TodayDue } from '../api/types.ts'
import type { JobLine } from '../cleanouts/asks.ts'

/** What is not finished at a sump, and matters to whoever stands there with a bucket. */
export interface OpenAt {
  /** Sheets that somebody works by. */
  jobs: JobLine[]
  /** Findings that nobody has answered for. */
  findings: TodayDue[]
  /** Its charge is being changed: what is poured now is drained again, or spoils the rinse. */
  isCleanedOut: boolean
}

/** @param jobs of the shop that are open, those that only wait for a slide among them */
export function openAt(sump: string, jobs: readonly JobLine[], due: readonly TodayDue[]): OpenAt {
  const here = jobs.filter((job) => job.sump === sump && job.state === 'open')
  return {
    jobs: here,
    findings: due.filter((one) => one.sump === sump && one.kind === 'health'),
    isCleanedOut: here.some(({ sheet }) => sheet === 'cleanout' || sheet === 'change-over'),
  }
}
