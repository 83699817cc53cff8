import { message, say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Entry } from '../api/types.ts'
import { type Fate, write } from './book-outbox.ts'

const words: Record<Fate, string> = {
  taken: message('Written down.'),
  held: message('In the book, where it waits for a keeper before it counts.'),
  waiting: message('Kept on this device; it goes into the book once that is in reach.'),
  'only-here': message(
    'This device did not keep it and the book is out of reach: only this open page holds it. Leave the page open until it is sent.',
  ),
  refused: message('Not taken by the book: what it says against it stands behind “not taken”, at the top of the page.'),
}

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
      const fate = await write(items).finally(() => setBusy(false))
      setSaid(say(words[fate]))
      return fate !== 'refused'
    },
  }
}
