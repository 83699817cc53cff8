import { say } from '@sumpbook/fluid'
import type { Book } from '../api/types.ts'
import { CostPart } from '../cost/cost-part.tsx'
import { MonthPart } from '../cost/month-part.tsx'
import { PartedPage } from '../parts/parted-page.tsx'
import { StockPart } from './stock-part.tsx'
import { WastePart } from './waste-part.tsx'
import './stock.css'

/** What the shop holds and what it must get rid of: concentrate by lots, waste by containers. */
export function StockAndCost({ book, part }: { book: Book; part: string | null }) {
  return (
    <PartedPage
      title={say('Stock & cost')}
      base="/stock"
      part={part}
      parts={[
        { id: null, name: say('Stock'), show: () => <StockPart book={book} /> },
        { id: 'waste', name: say('Waste'), show: () => <WastePart book={book} /> },
        { id: 'cost', name: say('Cost'), show: () => <CostPart book={book} /> },
        { id: 'month', name: say('Month'), show: () => <MonthPart book={book} /> },
      ]}
    />
  )
}
