import { say } from '@sumpbook/fluid'
import type { Book } from '../api/types.ts'
import { PartedPage } from '../parts/parted-page.tsx'
import { Batch } from './batch.tsx'
import { Cart } from './cart.tsx'
import { FactorTool } from './factor.tsx'
import { MixerTool } from './mixer.tsx'
import { RecipeTool } from './recipe.tsx'
import './mixing.css'

/** What is poured, and what it is poured with: recipes, batches, one cart for many sumps, the mixer, the fluid's factor. */
export function Mixing({ book, part }: { book: Book; part: string | null }) {
  return (
    <PartedPage
      title={say('Mixing')}
      base="/mixing"
      part={part}
      parts={[
        { id: null, name: say('Recipe'), show: () => <RecipeTool book={book} /> },
        { id: 'batch', name: say('Batch'), show: () => <Batch book={book} /> },
        { id: 'cart', name: say('Cart'), show: () => <Cart book={book} /> },
        { id: 'mixer', name: say('Mixer'), show: () => <MixerTool book={book} /> },
        { id: 'factor', name: say('Factor'), show: () => <FactorTool book={book} /> },
      ]}
    />
  )
}
