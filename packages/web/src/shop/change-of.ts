import type { Thing } from '../api/types.ts'
import { setAt } from './value-at.ts'

export interface Change {
  changes: Record<string, unknown>
  was: Record<string, unknown>
}

/** What a form changes of a thing, field by field of the first level, and what each was; null where nothing changed. */
export function changeOf(before: Thing, values: Readonly<Record<string, unknown>>): Change | null {
  const after = structuredClone(before) as Record<string, unknown>
  for (const [path, value] of Object.entries(values)) setAt(after, path.split('.'), value)
  const changes: Record<string, unknown> = {}
  const was: Record<string, unknown> = {}
  for (const key of new Set(Object.keys(values).map((path) => path.split('.')[0]!))) {
    const [old, now] = [before[key] ?? null, pruned(after[key])]
    if (JSON.stringify(old) === JSON.stringify(now)) continue
    changes[key] = now
    was[key] = old
  }
  return Object.keys(changes).length === 0 ? null : { changes, was }
}

/** Without the nulls inside; an object that has nothing left is itself null. */
function pruned(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value ?? null
  const kept = Object.entries(value).flatMap(([key, inner]) => {
    const plain = pruned(inner)
    return plain === null ? [] : [[key, plain] as const]
  })
  return kept.length === 0 ? null : Object.fromEntries(kept)
}
