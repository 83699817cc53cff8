import { answered, gotNoAnswer, staysOffLine } from '../offline/reach.ts'
import type { Backups } from '../shop/say-backup.ts'
import { readingHeaders } from '../speech/this-reading.ts'
import type {
  Book,
  Entry,
  FaultDetail,
  ImportReport,
  JournalPart,
  Measurement,
  OtherWaterAnswer,
  Outlook,
  Plan,
  Problem,
  SheetMap,
  SumpDiagnosis,
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
  /** What was said instead of an answer ("507 Insufficient Storage: …"); null where nothing was. */
  readonly said: string | null
  readonly status: number | null

  constructor(said: string | null = null, status: number | null = null) {
    super(said === null ? 'The book is out of reach just now.' : `The book does not answer just now: ${said}`)
    this.name = 'OutOfReach'
    this.said = said
    this.status = status
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
/** What is poured from now on: null is the strength that holds the target; days between fills. */
export interface PlanQuestion {
  water: string
  strength: number | null
  every: number
}
export const readPlan = (id: string, { water, strength, every }: PlanQuestion) =>
  ask<Plan>(
    `/sumps/${encodeURIComponent(id)}/plan?days=28,91,182&every=${every}&water=${encodeURIComponent(water)}${strength === null ? '' : `&strength=${strength}`}`,
  )
/** What may be wrong with it, with all it was weighed from. */
export const readDiagnosis = (id: string) => ask<SumpDiagnosis>(`/sumps/${encodeURIComponent(id)}/diagnosis`)
/** What another water would have made of it since a day. */
export const readOtherWater = (id: string, { water, since }: { water: string; since: string }) =>
  ask<OtherWaterAnswer>(
    `/sumps/${encodeURIComponent(id)}/other-water?water=${encodeURIComponent(water)}&since=${since}`,
  )
export const readBook = () => ask<Book>('/book')
/** A water's analyses or a mixer's checks, oldest first. */
export const readMeasurements = async (kind: 'water' | 'mixer', id: string) =>
  (await ask<{ measurements: Measurement[] }>(`/things/${kind}/${encodeURIComponent(id)}/measurements`)).measurements
/** @param question what of it, as the API asks for it; empty: all of it */
export const readJournal = (question: string, cursor: string | null) =>
  ask<JournalPart>(
    `/entries?limit=50${question === '' ? '' : `&${question}`}${cursor === null ? '' : `&cursor=${encodeURIComponent(cursor)}`}`,
  )
/** Where the journal, or what is asked for of it, can be had as a table. */
export const journalTableAddress = (question: string, format: 'csv' | 'xlsx') =>
  `${base}/entries/table?format=${format}${question === '' ? '' : `&${question}`}`

/** What time this device has: the server then knows how far its clock is off. */
const writing = () => ({ 'content-type': 'application/json', 'sumpbook-sent-at': new Date().toISOString() })

/** Writes one entry; the same entry again changes nothing, so a retry is always safe. */
export const putEntry = (entry: Entry) =>
  ask<unknown>(`/entries/${entry.id}`, { method: 'PUT', headers: writing(), body: JSON.stringify(entry) })

/** What the book says of one of the entries it was sent. */
export interface EntryArrival {
  id: string
  status: 'added' | 'same' | 'conflict' | 'refused'
  quarantine: string | null
  faults: FaultDetail[]
  confirmable: boolean
}

/** Writes many, each judged by itself. A request that gets no answer in half a minute is sent again another time. */
export const putEntries = async (entries: readonly Entry[]) =>
  (
    await ask<{ results: EntryArrival[] }>('/entries', {
      method: 'PUT',
      headers: writing(),
      body: JSON.stringify({ entries }),
      signal: AbortSignal.timeout(30_000),
    })
  ).results

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

/** Asks the server. A question is given up after a minute; what changes something is waited for as long as it takes, unless it brings a signal. */
export async function ask<T>(path: string, init: RequestInit = {}): Promise<T> {
  if (staysOffLine.now()) throw new OutOfReach('this device is kept off line.')
  const sentAt = Date.now()
  const isQuestion = init.method === undefined || init.method === 'GET'
  const response = await fetch(base + path, {
    ...(isQuestion ? { signal: AbortSignal.timeout(60_000) } : {}),
    ...init,
    headers: { ...readingHeaders(), ...(init.headers as Record<string, string> | undefined) },
  }).catch(() => noAnswer(null))
  const answeredAt = Date.now()
  const body = await bodyOf(response)
  if (response.ok) {
    answered({ sentAt, answeredAt, date: response.headers.get('date') })
    return body as T
  }
  // A server that restarts, or something between it and us, is no answer to what was asked.
  const isOurs = (body as Problem | null)?.type?.startsWith('urn:sumpbook:') === true
  const { status, statusText } = response
  if (status >= 500 || status === 408 || (status === 429 && !isOurs) || !isProblem(body)) {
    const { title, detail } = (isProblem(body) ? body : {}) as Partial<Problem>
    return noAnswer(`${status} ${detail ?? title ?? statusText}`.trim(), status)
  }
  answered({ sentAt, answeredAt, date: response.headers.get('date') })
  throw new Refusal(status, { ...body, status })
}

function noAnswer(said: string | null, status: number | null = null): never {
  gotNoAnswer(said)
  throw new OutOfReach(said, status)
}

/** What an answer says; an answer that broke off, or a page that something else on the way shows in its place, is none. */
async function bodyOf(response: Response): Promise<unknown> {
  const text = await response.text().catch(() => noAnswer(null))
  if (text === '') return null
  try {
    return JSON.parse(text)
  } catch {
    return response.ok ? noAnswer('something else answers in its place.') : null
  }
}

const isProblem = (body: unknown): body is Problem => typeof (body as Problem | null)?.title === 'string'
