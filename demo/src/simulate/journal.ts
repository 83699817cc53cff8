import type { EntryDocument } from '../book-document.ts'
import { early, keeper, late } from '../people/roster.ts'
import { entryId } from './entry-id.ts'
import type { Random } from './random.ts'
import { instantText, type ShopDays } from './shop-days.ts'

/** Who wrote what down, and when. */
export interface Written {
  kind: string
  sump?: string
  about?: { kind: string; id?: string }
  atMs: number
  by: string
  /** When it was written down; some seconds after `atMs` without it. */
  recordedMs?: number
  typed?: Record<string, string>
  note?: string
  /** The fields of its kind. */
  fields?: Record<string, unknown>
  /** It opens a job, which is named by it. */
  opensJob?: true
}

export interface Journal {
  /** Gives the entry's id. */
  write(written: Written): string
  /** All that was written down up to an instant, as it was written down. */
  entriesUpTo(ms: number): EntryDocument[]
}

const devices: Readonly<Record<string, string>> = { [early]: 'phone-1', [late]: 'phone-2', [keeper]: 'tablet-hall-b' }

/** The journal that people of the shop keep. */
export function journalOf(days: ShopDays, random: Random): Journal {
  const written: { recordedMs: number; entry: EntryDocument }[] = []
  return {
    write: (what) => {
      const recordedMs = Math.round(what.recordedMs ?? what.atMs + 1000 * Math.round(random.between(5, 90)))
      const entry = entryOf(days, what, recordedMs, random)
      written.push({ recordedMs, entry })
      return entry.id
    },
    entriesUpTo: (ms) =>
      written
        .filter(({ recordedMs }) => recordedMs <= ms)
        .sort((a, b) => a.recordedMs - b.recordedMs)
        .map(({ entry }) => entry),
  }
}

function entryOf(days: ShopDays, what: Written, recordedMs: number, random: Random): EntryDocument {
  const { kind, sump, about, atMs, by, typed, note, fields, opensJob } = what
  const id = entryId(recordedMs, random.bits)
  return {
    id,
    kind,
    ...(sump === undefined ? {} : { sump }),
    ...(about === undefined ? {} : { about }),
    at: instantText(days, atMs),
    by,
    device: devices[by] ?? 'phone-1',
    recordedAt: instantText(days, recordedMs),
    ...(typed === undefined || Object.keys(typed).length === 0 ? {} : { typed }),
    ...(note === undefined ? {} : { note }),
    ...fields,
    ...(opensJob === true ? { job: id } : {}),
  }
}
