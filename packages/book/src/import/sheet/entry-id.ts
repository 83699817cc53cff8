import { hash } from 'node:crypto'
import type { Draft } from './row-entries.ts'
import { TimesSeen } from './times-seen.ts'

/** The place of an entry in a sheet: the same place gives the same id, whoever reads the sheet and when. */
export interface Slot {
  sump: string
  /** UTC, fixed width. */
  at: string
  /** Which fields of the row the entry is made of, such as `brix` or `addition`. */
  group: string
  /** Which one of those of the same sump, time and group in the sheet, from 0. */
  ordinal: number
}

/**
 * The id of the entry at a place: a UUID of version 8 (RFC 9562 §5.8) of the SHA-256 of the place and the revision.
 * Revision 0 is what was first read there; each corrected cell makes the next.
 */
export const entryIdAt = (slot: Slot, revision: number): string => uuid8(`${spelled(slot)}/${revision}`)

/** The id of the void that withdraws one revision of the entry at a place. */
export const voidIdAt = (slot: Slot, revision: number): string => uuid8(`${spelled(slot)}/${revision}/void`)

/** One spelling a place: the sump's id may hold any sign, so its length goes before it. */
const spelled = ({ sump, at, group, ordinal }: Slot) =>
  `sumpbook-sheet/1/${sump.length}/${sump}/${at}/${group}/${ordinal}`

function uuid8(text: string): string {
  const hex = hash('sha256', text)
  const variant = ((Number.parseInt(hex[16]!, 16) & 0x3) | 0x8).toString(16)
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`
}

/** Counts those of the same sump, time and group as they come. */
export interface Ordinals {
  next(draft: Draft): number
}

export function ordinals(): Ordinals {
  const seen = new Map<string, TimesSeen>()
  return {
    next: ({ group, entry: { sump, at } }) => {
      const series = `${group}/${sump}`
      let times = seen.get(series)
      if (times === undefined) {
        times = new TimesSeen()
        seen.set(series, times)
      }
      return times.add(Date.parse(at))
    },
  }
}
