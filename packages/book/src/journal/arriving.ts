import type { Entry } from '../schema/entries/index.ts'
import type { ArrivingEntry } from '../store/store.ts'
import { canonicalJson } from './canonical.ts'
import { rankOf, utc } from './order.ts'

/** An entry as the journal takes it; `sent` is what the device sent, to the letter, unknown fields included. */
export function arriving(sent: { id: string; at: string; kind: string }): ArrivingEntry {
  const { id, at, kind, sump, about } = sent as Pick<Entry, 'id' | 'at' | 'kind'> & {
    sump?: string
    about?: { kind: string; id?: string }
  }
  return {
    id: id.toLowerCase(),
    at: utc(at),
    rank: rankOf(kind),
    kind,
    sump: sump ?? null,
    aboutKind: about?.kind ?? null,
    aboutId: about?.id ?? null,
    body: canonicalJson(sent),
  }
}
