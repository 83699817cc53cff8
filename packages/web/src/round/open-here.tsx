import { Link } from 'wouter-preact'
import { useToday } from '../api/queries.ts'
import { useJobs } from '../cleanouts/asks.ts'
import { JobUnderWay } from '../parts/job-under-way.tsx'
import { type OpenAt, openAt } from './open-at.ts'

/** What is not finished at this sump, as the book last said. */
export function useOpenHere(sump: string): OpenAt {
  const { data: jobs } = useJobs()
  const { data: today } = useToday()
  return openAt(sump, jobs?.open ?? [], today?.due ?? [])
}

/** A line for each thing that is not finished here, before anything is read or poured. */
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
