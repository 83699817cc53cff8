import type { People } from './people.ts'

/** Whoever stands somewhere in an answer as `by`, with their name in its place; `person` keeps the id. */
export async function withNamesWithin<Answer>(people: People, answer: Answer): Promise<Answer> {
  if (!JSON.stringify(answer).includes('"by":"')) return answer
  const names = await people.names()
  return named(answer, names) as Answer
}

function named(value: unknown, names: ReadonlyMap<string, string>): unknown {
  if (Array.isArray(value)) return value.map((inner) => named(inner, names))
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value).map(([key, inner]) => [key, named(inner, names)] as const)
  const copy: Record<string, unknown> = Object.fromEntries(entries)
  if (typeof copy.by !== 'string') return copy
  const name = names.get(copy.by)
  return { ...copy, by: name ?? copy.by, person: name === undefined ? null : copy.by }
}
