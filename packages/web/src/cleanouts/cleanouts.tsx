import { say } from '@sumpbook/fluid'
import type { Book } from '../api/types.ts'
import { PartedPage } from '../parts/parted-page.tsx'
import { JobsPart } from './jobs-part.tsx'
import { PlanPart } from './plan-part.tsx'
import { SideBySidePart } from './side-by-side-part.tsx'
import { StandstillPart } from './standstill-part.tsx'
import { UpkeepPart } from './upkeep-part.tsx'
import './cleanouts.css'

/** Sheets that are worked by, plans of cleanouts, what comes back on its days, and machines that stand. */
export function Cleanouts({ book, part }: { book: Book; part: string | null }) {
  return (
    <PartedPage
      title={say('Cleanouts')}
      base="/cleanouts"
      part={part}
      parts={[
        { id: null, name: say('Jobs'), show: () => <JobsPart book={book} /> },
        { id: 'plan', name: say('Plan'), show: () => <PlanPart book={book} /> },
        { id: 'together', name: say('Several'), show: () => <SideBySidePart book={book} /> },
        { id: 'upkeep', name: say('Upkeep'), show: () => <UpkeepPart book={book} /> },
        { id: 'shutdown', name: say('Shutdown'), show: () => <StandstillPart book={book} /> },
      ]}
    />
  )
}
