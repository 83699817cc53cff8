import { useRef, useState } from 'preact/hooks'
import type { Entry, ShopOfBook, SumpNow } from '../api/types.ts'
import { isOnlyHere, keepHere, sendSoon, whenInBook } from '../entry/book-outbox.ts'
import { labelOf } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { dropPhoto, photoWritten } from '../photo/waiting-photos.ts'
import { readerOf } from '../say/units.ts'
import { isAllSeen } from './signs.ts'
import { foundEntries, withPhoto } from './stop-entries.ts'
import { recordOf, type StopRecord } from './stop-record.ts'
import type { Verdict } from './verdict.ts'
import type { Visit } from './visit.ts'
import { type Done, type Draft, dropDraft } from './walk.ts'

/** Writes down what a stop came to, and goes on from there. */
export type WriteDown = (what: Done | null, more?: (stamp: Stamp) => Entry[], to?: string) => Promise<void>

interface WriteDownParts {
  draft: Draft
  verdict: Verdict
  sump: SumpNow
  shop: ShopOfBook
  goOn(what: Done | null, record: StopRecord | null, to?: string): void
}

/** How a stop is written down: kept on this device first, sent by and by, and what was typed stays until one of the two has it. */
export function useWriteDown({ draft, verdict, sump, shop, goOn }: WriteDownParts) {
  const [isAlone, setAlone] = useState(false)
  const [onlyHere, setOnlyHere] = useState<(() => void) | null>(null)
  const isWriting = useRef(false)
  const reader = readerOf(shop.units)
  const { seen, photo } = draft

  const writeDown: WriteDown = async (what, more = () => [], to) => {
    if (isWriting.current) return
    const stamp = stampNow()
    const written = [...foundEntries(draft, verdict, sump.sump, stamp), ...more(stamp)]
    // A picture alone says nothing: it goes with what was seen or read.
    if (photo !== null && written.length === 0 && to === undefined) return setAlone(true)
    const entries = withPhoto(written, photo)
    const record = recordOf(entries, reader)
    const done = what ?? (entries.length > 0 || isAllSeen(seen) ? 'read' : null)
    if (entries.length > 0) {
      isWriting.current = true
      const from: Visit = { draft: draft.id, sump: sump.sump, done, at: Date.now(), record }
      const items = entries.map((entry) => ({ entry, label: labelOf(entry, sump.name, reader), from }))
      // Before the entry that names it: what is killed in between leaves a picture too many, never one too few.
      if (photo !== null) await photoWritten(photo).catch(() => {})
      const kept = await keepHere(items)
      const sent = sendSoon()
      // What the device does not keep stays typed there until the book has it.
      if (kept === 'page') {
        void whenInBook(items).then(() => dropDraft(sump.sump))
        await sent
      }
      isWriting.current = false
      if (isOnlyHere(items)) return setOnlyHere(() => () => goOn(done, record, to))
    } else if (photo !== null) void dropPhoto(photo).catch(() => {})
    dropDraft(sump.sump)
    goOn(done, entries.length === 0 ? null : record, to)
  }

  return {
    writeDown,
    /** Somebody wanted to write down a picture and nothing that it goes with. */
    isAlone,
    /** The way on, where neither device nor book took what was written. */
    onlyHere,
  }
}
