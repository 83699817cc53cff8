import type { Backups } from '../shop/say-backup.ts'
import type {
  Book,
  Entry,
  ImportReport,
  JournalPart,
  Measurement,
  OtherWaterAnswer,
  Outlook,
  Plan,
  Problem,
  SheetMap,
  SumpNow,
  SumpPage,
  Today,
} from './types.ts'

/** The server answered, and said no. */
export class Refusal extends Error {
  readonly status: number
  readonly problem: Problem

  constructor(status: number, problem: Problem) {
    super(problem.detail ?? problem.title)
    this.name = 'Refusal'
    this.status = status
    this.problem = problem
  }
}

/** No answer: the network, or the server behind it, is not there. What was to be sent is still here. */
export class OutOfReach extends Error {
  constructor() {
    super('The book is out of reach just now.')
    this.name = 'OutOfReach'
  }
}

const base = '/api/v1'

export const readToday = () => ask<Today>('/today')
export const readSumps = async () => (await ask<{ sumps: SumpNow[] }>('/sumps')).sumps
export const readSump = (id: string) => ask<SumpPage>(`/sumps/${encodeURIComponent(id)}`)
/** Its past days, now and the days ahead, with intervals. */
export const readOutlook = (id: string, daysBack: number) =>
  ask<Outlook>(`/sumps/${encodeURIComponent(id)}/outlook?daysBack=${daysBack}`)
/** Where a sump goes if it is topped up with one water and one strength; the strength that holds it without one. */
export const readPlan = (id: string, { water, strength }: { water: string; strength: number | null }) =>
  ask<Plan>(
    `/sumps/${encodeURIComponent(id)}/plan?days=28,91,182&water=${encodeURIComponent(water)}${strength === null ? '' : `&strength=${strength}`}`,
  )
/** What another water would have made of it since a day. */
export const readOtherWater = (id: string, { water, since }: { water: string; since: string }) =>
  ask<OtherWaterAnswer>(
    `/sumps/${encodeURIComponent(id)}/other-water?water=${encodeURIComponent(water)}&since=${since}`,
  )
export const readBook = () => ask<Book>('/book')
/** A water's analyses or a mixer's checks, oldest first. */
export const readMeasurements = async (kind: 'water' | 'mixer', id: string) =>
  (await ask<{ measurements: Measurement[] }>(`/things/${kind}/${encodeURIComponent(id)}/measurements`)).measurements
export const readJournal = (cursor: string | null) =>
  ask<JournalPart>(`/entries?limit=50${cursor === null ? '' : `&cursor=${encodeURIComponent(cursor)}`}`)

/** Writes one entry; the same entry again changes nothing, so a retry is always safe. */
export const putEntry = (entry: Entry) =>
  ask<unknown>(`/entries/${entry.id}`, {
    method: 'PUT',
    // What time this device has: the server then knows how far its clock is off.
    headers: { 'content-type': 'application/json', 'sumpbook-sent-at': new Date().toISOString() },
    body: JSON.stringify(entry),
  })

export const loadExample = () => ask<unknown>('/demo', { method: 'POST' })

/** What a sheet or a book file would become (`preview`), or its import. */
export function sendSheet(file: File, map: SheetMap, { preview }: { preview: boolean }): Promise<ImportReport> {
  const form = new FormData()
  form.set('map', JSON.stringify(map))
  form.set('file', file)
  return ask<ImportReport>(`/import?preview=${preview}`, { method: 'POST', body: form })
}

/** When the book was last backed up, and how trying it went. */
export const readBackups = () => ask<Backups>('/backup')
/** Backs up, restores for a trial, compares. */
export const runDrill = () => ask<unknown>('/backup/drill', { method: 'POST' })
/** Where a fresh backup can be had. */
export const archiveAddress = `${base}/backup/archive`

/** Where the whole book can be had as a file. */
export const exportAddress = `${base}/export`

/** Asks the server. */
export async function ask<T>(path: string, init?: RequestInit): Promise<T> {
  const response = await fetch(base + path, init).catch(() => {
    throw new OutOfReach()
  })
  const body: unknown = await response.json().catch(() => null)
  if (response.ok) return body as T
  // A server that restarts, or something between it and us, is no answer to what was asked.
  const isOurs = (body as Problem | null)?.type?.startsWith('urn:sumpbook:') === true
  if (response.status >= 500 || response.status === 408 || (response.status === 429 && !isOurs)) throw new OutOfReach()
  throw new Refusal(response.status, problemOf(response, body))
}

function problemOf({ status, statusText }: Response, body: unknown): Problem {
  const said = body as Partial<Problem> | null
  return { ...said, status, title: said?.title ?? (statusText || `The server answered ${status}.`) }
}
