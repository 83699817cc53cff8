import { say } from '@sumpbook/fluid'
import type { Book } from '../api/types.ts'
import { later } from '../later.tsx'
import { PartedPage } from '../parts/parted-page.tsx'
import { AheadTool } from './ahead.tsx'
import { Sources } from './sources.tsx'
import { TreatmentTool } from './treatment.tsx'
import './water.css'

/** The solver behind it is fetched when somebody blends. */
const BlendTool = later(() => import('./blend.tsx').then(({ BlendTool }) => BlendTool))

/** The shop's waters, what their minerals do in a sump, blends of them, and what it takes to purify one. */
export function Water({ book, part }: { book: Book; part: string | null }) {
  return (
    <PartedPage
      title={say('Water')}
      base="/water"
      part={part}
      parts={[
        { id: null, name: say('Sources'), show: () => <Sources book={book} /> },
        { id: 'ahead', name: say('Ahead'), show: () => <AheadTool book={book} /> },
        { id: 'blend', name: say('Blend'), show: () => <BlendTool book={book} /> },
        { id: 'treatment', name: say('Treatment'), show: () => <TreatmentTool book={book} /> },
      ]}
    />
  )
}
