import { say } from '@sumpbook/fluid'
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
          {say(
            'No job sheet yet. A sheet carries a cleanout step by step, says how much of what goes in, and is signed at the machine, by one person or by several.',
          )}
        </p>
        <div class="buttons">
          <Link class="button main" href="/cleanouts/plan">
            {say('Plan a cleanout')}
          </Link>
          <Link class="button" href="/cleanouts/shutdown">
            {say('A machine will stand')}
          </Link>
        </div>
      </>
    )
  }
  return (
    <div class="jobs">
      <JobList heading={say('Under way')} jobs={open} timeZone={timeZone} />
      <JobList heading={say('Planned')} jobs={planned} timeZone={timeZone} />
      <JobList heading={say('Done')} jobs={done.slice(0, 30)} timeZone={timeZone} />
      <div class="buttons">
        <Link class="button" href="/cleanouts/plan">
          {say('Plan a cleanout')}
        </Link>
      </div>
    </div>
  )
}

const sayClaim = ({ by }: { by: string | null }) =>
  by === null ? say('Another device is on it.') : say('{who} is on it.', { who: by })

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
            {job.claimedBy !== null && <span class="quiet">{sayClaim(job.claimedBy)}</span>}
            {job.endedAt !== null && <span class="quiet">{sayDay(job.endedAt, timeZone)}</span>}
          </li>
        ))}
      </ul>
    </section>
  )
}
