import { useState } from 'preact/hooks'
import type { Entry } from '../api/types.ts'
import { write } from './book-outbox.ts'

const words = {
  taken: 'Written down.',
  waiting: 'Kept on this device; it goes into the book once that is in reach.',
  refused: 'Not taken by the book: what it says against it stands behind “not taken”, at the top of the page.',
} as const

/** Entries on their way into the book, and what became of them. */
export function useWriting() {
  const [isBusy, setBusy] = useState(false)
  const [said, setSaid] = useState('')
  return {
    isBusy,
    /** A sentence once something was written; empty before. */
    said,
    hush: () => setSaid(''),
    /** @returns whether they are in the book or on their way */
    async write(items: readonly { entry: Entry; label: string }[]): Promise<boolean> {
      if (isBusy) return false
      setBusy(true)
      setSaid('')
      const sent = await write(items)
      setBusy(false)
      setSaid(words[sent])
      return sent !== 'refused'
    },
  }
}
