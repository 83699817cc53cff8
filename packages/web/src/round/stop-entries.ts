import type { Entry } from '../api/types.ts'
import { observationEntry, readingEntry } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { lookedEntry } from '../tests/test-entries.ts'
import { isAllSeen, type Seen, signsOf } from './signs.ts'
import { testedEntries } from './tested.ts'
import type { Verdict } from './verdict.ts'
import type { Draft } from './walk.ts'

/** What was read, seen and tested at a stop, an entry each. */
export function foundEntries({ typed, seen, tested }: Draft, verdict: Verdict, sump: string, stamp: Stamp): Entry[] {
  const found = [readingEntry(typed, verdict, sump, stamp), lookOf(seen, sump, stamp)]
  return [...found.filter((entry) => entry !== null), ...testedEntries(tested, sump, stamp)]
}

/** What was seen; that all was fine is written down as well, since a daily look is asked for by more than one guidance. */
function lookOf(seen: Seen, sump: string, stamp: Stamp): Entry | null {
  const signs = signsOf(seen)
  return signs.length === 0 && isAllSeen(seen) ? lookedEntry(sump, stamp) : observationEntry(signs, sump, stamp)
}

/** One entry names the picture: what was seen, else the first. */
export function withPhoto(entries: readonly Entry[], photo: string | null): Entry[] {
  if (photo === null) return [...entries]
  const named = entries.find(({ kind }) => kind === 'observation') ?? entries[0]
  return entries.map((entry) => (entry === named ? ({ ...entry, photo } as Entry) : entry))
}
