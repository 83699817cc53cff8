import { useRef } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useToday } from '../api/queries.ts'
import { useJobs } from '../cleanouts/asks.ts'
import { JobUnderWay } from '../parts/job-under-way.tsx'
import { type OpenAt, openAt } from './open-at.ts'
import { type OpenShown, openShown } from './open-shown.ts'
import type { Step } from './use-steps.ts'

/** What is not finished at this sump, as the book last said. */
export function useOpenHere(sump: string, step: Step) {
  const { data: jobs } = useJobs()
  const { data: today } = useToday()
  const found = openAt(sump, jobs?.open ?? [], today?.due ?? [])
  const shown = useRef<OpenShown | null>(null)
  shown.current = openShown(shown.current, step, found)
  const { above, below } = shown.current
  return { above, below, isCleanedOut: found.isCleanedOut }
}

/** A line for each thing that is not finished here. */
export const OpenHere = ({ jobs, findings }: OpenAt) => (
  <>
    {jobs.map((job) => (
      <JobUnderWay key={job.id} job={job} />
    ))}
    {findings.map(({ key, page, headline }) => (
      <p class="note" key={key}>
        <Link href={page}>{headline}</Link>.
      </p>
    ))}
  </>
)
