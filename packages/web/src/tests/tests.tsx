import { say } from '@sumpbook/fluid'
import type { Book } from '../api/types.ts'
import { PartedPage } from '../parts/parted-page.tsx'
import { DuePart } from './due-part.tsx'
import { FoundPart } from './found-part.tsx'
import { SamplesPart } from './samples-part.tsx'
import './tests.css'

/** What is tested when, samples whose results come later, and what was found over time. */
export function Tests({ book, part }: { book: Book; part: string | null }) {
  return (
    <PartedPage
      title={say('Tests')}
      base="/tests"
      part={part}
      parts={[
        { id: null, name: say('Due'), show: () => <DuePart book={book} /> },
        { id: 'samples', name: say('Samples'), show: () => <SamplesPart book={book} /> },
        { id: 'found', name: say('Found'), show: () => <FoundPart book={book} /> },
      ]}
    />
  )
}
