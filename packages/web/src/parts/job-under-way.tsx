import type { ClaimedPour } from '@sumpbook/book/today'
import type { ComponentChildren } from 'preact'
import { Link } from 'wouter-preact'
import { Said } from '../say/said.tsx'

/** While a sump is cleaned out nothing else is poured there. */
export function JobUnderWay({ job }: { job: NonNullable<ClaimedPour<unknown>['job']> }) {
  const sheet = (title: ComponentChildren) => <Link href={`/cleanouts/sheet/${job.id}`}>{title}</Link>
  return (
    <p class="note">
      {job.next === null ? (
        <Said text="<job>{title}</job> is under way." parts={{ job: sheet }} values={{ title: job.title }} />
      ) : (
        <Said
          text="<job>{title}</job> is under way; next: {next}."
          parts={{ job: sheet }}
          values={{ title: job.title, next: job.next }}
        />
      )}
    </p>
  )
}
