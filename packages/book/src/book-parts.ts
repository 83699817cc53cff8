import type { Reader, ShopEstimate } from '@sumpbook/fluid'
import type { Checkpoints } from './estimate/checkpoints.ts'
import type { ThingHistory } from './setup/things.ts'
import type { JournalReader } from './store/store.ts'

/** How a person wants to read: units other than the shop's, another language's number signs. */
export type TodayReader = Partial<Reader>

/** What a book is read from. */
export interface BookParts {
  journal: JournalReader
  checkpoints: Checkpoints<ShopEstimate>
  things: () => Promise<ThingHistory>
}
