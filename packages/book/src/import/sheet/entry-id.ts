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
 * The id of the entry at a place: a UUID of version 8 (RFC 9562 §5.8), its first 48 bits the time in milliseconds since
 * 1970, as in version 7, so that a store keeps neighbours together; the rest from the SHA-256 of the place and the
 * revision. Revision 0 is what was first read there; each corrected cell makes the next.
 */
export const entryIdAt = (slot: Slot, revision: number): string => uuid8(slot.at, `${spelled(slot)}/${revision}`)

/** The id of the void that withdraws one revision of the entry at a place. */
export const voidIdAt = (slot: Slot, revision: number): string => uuid8(slot.at, `${spelled(slot)}/${revision}/void`)

/** One spelling a place: the sump's id may hold any sign, so its length goes before it. */
const spelled = ({ sump, at, group, ordinal }: Slot) =>
  `sumpbook-sheet/1/${sump.length}/${sump}/${at}/${group}/${ordinal}`

function uuid8(at: string, text: string): string {
  const time = Math.max(0, Date.parse(at)).toString(16).padStart(12, '0')
  const hex = hash('sha256', text)
  const variant = ((Number.parseInt(hex[3]!, 16) & 0x3) | 0x8).toString(16)
  return `${time.slice(0, 8)}-${time.slice(8)}-8${hex.slice(0, 3)}-${variant}${hex.slice(4, 7)}-${hex.slice(7, 19)}`
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
