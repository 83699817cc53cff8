import { sayFault } from '../errors.ts'
import { arriving } from '../journal/arriving.ts'
import { canonicalJson } from '../journal/canonical.ts'
import { entry, entryKinds, unknownEntry } from '../schema/entries/index.ts'
import { faultsOf } from '../schema/faults.ts'
import { governs } from '../store/sql-store.ts'
import type { EntryRow } from '../store/tables.ts'

/** What is wrong with an entry by itself, in sentences: its body, and the columns that are made from it. */
export function entryFaults({ body, ...row }: EntryRow): { faults: string[]; remarks: string[] } {
  const sent = parsed(body)
  if (sent === undefined) return { faults: ['its body is not JSON'], remarks: [] }
  const judged = unknownEntry.safeParse(sent)
  if (!judged.success) {
    return {
      faults: faultsOf(judged.error, sent).map((fault) => `its body is no entry: ${sayFault(fault)}`),
      remarks: [],
    }
  }
  if (!isCanonical(body, sent)) return { faults: ['its body is not in its canonical spelling'], remarks: [] }
  return { faults: columnFaults(row, judged.data), remarks: misfits(judged.data) }
}

/** An entry that came while its kind was not known here may not fit what this version makes of the kind: it is as it came. */
function misfits(sent: { kind: string }): string[] {
  if (!(entryKinds as readonly string[]).includes(sent.kind)) return []
  const judged = entry.safeParse(sent)
  return judged.success ? [] : faultsOf(judged.error, sent).map((fault) => `does not fit its kind: ${sayFault(fault)}`)
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function isCanonical(body: string, sent: unknown): boolean {
  try {
    return canonicalJson(sent) === body
  } catch {
    // What has no canonical spelling is not in it.
    return false
  }
}

/** A column that says something else than the body would let an entry be found where it does not belong. */
function columnFaults(row: Omit<EntryRow, 'body'>, sent: Parameters<typeof arriving>[0]): string[] {
  const { id, at, rank, kind, sump, aboutKind, aboutId } = arriving(sent)
  const made: Partial<EntryRow> = {
    id,
    at,
    rank,
    kind,
    governs: governs(kind) ? kind : null,
    sump,
    about_kind: aboutKind,
    about_id: aboutId,
  }
  return Object.entries(made)
    .filter(([column, value]) => row[column as keyof typeof row] !== value)
    .map(([column, value]) => {
      const found = JSON.stringify(row[column as keyof typeof row])
      return `its column ${column} holds ${found}, and its body says ${JSON.stringify(value)}`
    })
}
