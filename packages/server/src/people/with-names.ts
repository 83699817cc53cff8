import type { People } from './people.ts'

/** Lines that say who, with the person's name in place of their id; `person` keeps the id. */
export async function withNames<Line extends { by: string | null }>(
  people: People,
  lines: readonly Line[],
): Promise<(Line & { person: string | null })[]> {
  const names = lines.some(({ by }) => by !== null) ? await people.names() : new Map<string, string>()
  return lines.map((line) => {
    const name = line.by === null ? undefined : names.get(line.by)
    return { ...line, by: name ?? line.by, person: name === undefined ? null : line.by }
  })
}
