import { amountOf, textOf } from '../estimate/amounts.ts'
import { entryLog } from '../journal/entry-log.ts'
import type { Entry } from '../schema/entries/index.ts'

/** What the waste needs of an entry. */
export type WasteEntry =
  | {
      kind: 'stored'
      container: string
      stream: string | null
      litres: number | null
      kilograms: number | null
      from: string | null
    }
  | {
      kind: 'pickup'
      container: string
      stream: string | null
      code: string | null
      litres: number | null
      kilograms: number | null
      document: string | null
    }
  | { kind: 'level'; container: string; litres: number }
  | { kind: 'document'; container: string; document: string; answers: string }
  | { kind: 'drawoff' | 'skim' | 'cleanout'; sump: string; litres: number | null }

/** All of a book that touches its waste. */
export const wasteLog = entryLog<WasteEntry>(['stored', 'pickup', 'check', 'drawoff', 'skim', 'cleanout'], wasteEntry)

/** Waste about no container by name lies in one place. */
export const unnamed = 'waste'

function wasteEntry(entry: Entry): WasteEntry | null {
  switch (entry.kind) {
    case 'stored':
    case 'pickup': {
      const container = entry.about.kind === 'waste' ? (textOf(entry.about.id) ?? unnamed) : unnamed
      const amounts = { litres: amountOf(entry.litres), kilograms: amountOf(entry.kilograms) }
      const stream = textOf(entry.stream)
      if (entry.kind === 'stored') return { kind: 'stored', container, stream, ...amounts, from: textOf(entry.from) }
      const [code, document] = [textOf(entry.code), textOf(entry.document)]
      return { kind: 'pickup', container, stream, code, ...amounts, document }
    }
    case 'check': {
      if (entry.about.kind !== 'waste') return null
      const container = textOf(entry.about.id) ?? unnamed
      const [document, answers, litres] = [textOf(entry.document), textOf(entry.answers), amountOf(entry.found)]
      if (document !== null && answers !== null) {
        return { kind: 'document', container, document, answers: answers.toLowerCase() }
      }
      return litres === null ? null : { kind: 'level', container, litres }
    }
    case 'drawoff':
      return { kind: 'drawoff', sump: entry.sump, litres: amountOf(entry.volume) }
    case 'skim':
      return { kind: 'skim', sump: entry.sump, litres: amountOf(entry.litres) }
    case 'cleanout':
      return { kind: 'cleanout', sump: entry.sump, litres: amountOf(entry.wasteVolume) }
    default:
      return null
  }
}
