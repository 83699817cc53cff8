import { keptAnswers } from './kept-answers.ts'
import { thisStore } from './this-store.ts'

const key = 'sumpbook.seen-by'

/** Who sees the book on this device, as it last knew; '' for a book without accounts, and where storage is forbidden. */
function seenBy(): string {
  try {
    return localStorage.getItem(key) ?? ''
  } catch {
    return ''
  }
}

/** The book's last answers on this device. */
export const thisKept = keptAnswers(thisStore, seenBy)

/** The session says who is here: a person, or a device that shows the book to all who stand before it. */
export async function seenNowBy(who: string): Promise<void> {
  if (who === seenBy() && !thisKept.isForgotten()) return
  try {
    localStorage.setItem(key, who)
  } catch {
    // Then nothing is kept for anybody in particular, and nothing of anybody's is left.
  }
  await thisKept.handTo(who)
}
