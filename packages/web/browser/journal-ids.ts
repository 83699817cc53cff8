/** Every id in the journal, youngest first. */
export async function journalIds(address: string): Promise<string[]> {
  const ids: string[] = []
  let next: string | null = null
  do {
    const answer = await fetch(`${address}/api/v1/entries?limit=500${next === null ? '' : `&cursor=${next}`}`)
    const part = (await answer.json()) as { entries: { id: string }[]; next: string | null }
    ids.push(...part.entries.map(({ id }) => id))
    next = part.next
  } while (next !== null)
  return ids
}
