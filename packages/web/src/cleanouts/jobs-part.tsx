import { Link } from 'wouter-preact'
import type { Book } from '../api/types.ts'
import { sayDay } from '../say/when.ts'
import { Asking } from './asking.tsx'
import { type JobLine, useJobs } from './asks.ts'

/** What is under way, planned and done. */
export function JobsPart({ book }: { book: Book }) {
  const jobs = useJobs()
  if (jobs.data === undefined) return <Asking error={jobs.error} />
  const { open, planned, done } = jobs.data
  const { timeZone } = book.shop
  if (open.length + planned.length + done.length === 0) {
    return (
      <>
        <p class="intro">
          No job sheet yet. A sheet carries a cleanout step by step, says how much of what goes in, and is signed at the
          machine, by one person or by several.
        </p>
        <div class="buttons">
          <Link class="button main" href="/cleanouts/plan">
            Plan a cleanout
          </Link>
          <Link class="button" href="/cleanouts/shutdown">
            A machine will stand
          </Link>
        </div>
      </>
    )
  }
  return (
    <div class="jobs">
      <JobList heading="Under way" jobs={open} timeZone={timeZone} />
      <JobList heading="Planned" jobs={planned} timeZone={timeZone} />
      <JobList heading="Done" jobs={done.slice(0, 30)} timeZone={timeZone} />
      <div class="buttons">
        <Link class="button" href="/cleanouts/plan">
          Plan a cleanout
        </Link>
      </div>
    </div>
  )
}

function JobList({ heading, jobs, timeZone }: { heading: string; jobs: readonly JobLine[]; timeZone: string }) {
  if (jobs.length === 0) return null
  return (
    <section aria-label={heading}>
      <h2>{heading}</h2>
      <ul class="job-list">
        {jobs.map((job) => (
          <li key={job.id}>
            <Link href={`/cleanouts/sheet/${job.id}`}>{job.title}</Link>
            <span>{job.sentence}</span>
            {job.claimedBy !== null && <span class="quiet">{job.claimedBy.by ?? 'Another device'} is on it.</span>}
            {job.endedAt !== null && <span class="quiet">{sayDay(job.endedAt, timeZone)}</span>}
          </li>
        ))}
      </ul>
    </section>
  )
}
