import { say } from '@sumpbook/fluid'
import { type EntryArrival, OutOfReach, putEntries, Refusal } from '../api/client.ts'
import { readEntry } from '../api/people.ts'
import type { Entry } from '../api/types.ts'
import type { Said, Sent } from './outbox.ts'

/** Sends entries to the book in one request, and says of each what the book said. */
export async function sendEntries(entries: readonly Entry[]): Promise<Sent> {
  try {
    const arrivals = new Map((await putEntries(entries)).map((arrival) => [arrival.id, arrival]))
    const said = await Promise.all(entries.map((entry) => saidOf(entry, arrivals.get(entry.id.toLowerCase()))))
    return { outcome: 'answered', said: said.filter((one) => one !== null) }
  } catch (error) {
    if (error instanceof Refusal) return refusedWhole(entries, error)
    if (!(error instanceof OutOfReach)) throw error
    // Over this very request the server failed, while others may go well.
    if (error.status === 500) return { outcome: 'fault', said: error.said ?? '500' }
    return { outcome: 'no-answer' }
  }
}

function refusedWhole(entries: readonly Entry[], { status, problem }: Refusal): Sent {
  // Nobody is signed in just now, or too many ask: what was written waits.
  if (status === 401 || status === 429) return { outcome: 'no-answer' }
  if (entries.length > 1 && status !== 403) return { outcome: 'fault', said: problem.title }
  return { outcome: 'answered', said: entries.map(({ id }) => ({ id, outcome: 'refused', problem })) }
}

async function saidOf(entry: Entry, arrival: EntryArrival | undefined): Promise<Said | null> {
  const { id } = entry
  if (arrival === undefined) return null
  const { status, quarantine, faults, confirmable } = arrival
  if (status === 'added' || status === 'same') return { id, outcome: 'taken', heldFor: quarantine }
  if (status === 'refused') {
    return { id, outcome: 'refused', problem: { title: say('The book refuses it'), errors: faults, confirmable } }
  }
  const { entry: standing } = await readEntry(id)
  if (isSameBut(standing, entry, 'confirmed')) return { id, outcome: 'taken', heldFor: quarantine }
  const title = say('Another entry stands under its number')
  return {
    id,
    outcome: 'refused',
    problem: { title, detail: say('Another entry stands under its number; that one was left as it is.'), status: 409 },
  }
}

/** What was sent before its values were confirmed, and arrived late, is the same entry. */
export function isSameBut(one: object, other: object, field: string): boolean {
  const without = (entry: object) =>
    JSON.stringify(entry, (key, value: unknown) => {
      if (key === field) return undefined
      if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
      return Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)))
    })
  return without(one) === without(other)
}
