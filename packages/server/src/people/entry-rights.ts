import { type Book, entryKinds, type Fault, readEnvelope, type StoredEntry } from '@sumpbook/book'
import { isKeepersStep } from '@sumpbook/fluid'
import { isLate } from './guard.ts'
import type { Identity } from './identity.ts'
import type { People } from './people.ts'
import { type Role, reaches } from './roles.ts'

/** What may become of one entry before the book judges it. */
export interface Right {
  /** Why this person may not write it. */
  fault: Fault | null
  /** Why a keeper must look at it first. */
  hold: string | null
  /** Whose it is. */
  author: string | null
}

/** Kinds of entries that keepers make. */
export const keeperKinds: readonly string[] = ['setup', 'verdict']
/** How long one takes back one's own entry. */
export const ownVoidMs = 24 * 60 * 60_000

interface Sent {
  id?: unknown
  kind?: unknown
  by?: unknown
  entry?: unknown
  reason?: unknown
  additive?: unknown
  job?: unknown
  step?: unknown
}

/** Whether each of these entries may be written by who sends them, in whose name, and whether a keeper must look at it first. */
export async function entryRights(
  { book, people, now }: { book: Book; people: People; now: Date },
  identity: Identity,
  entries: readonly unknown[],
): Promise<Right[]> {
  const free: Right = { fault: null, hold: null, author: null }
  if (identity.by === 'machine') return entries.map(() => free)
  const sent = entries.map((entry) => (typeof entry === 'object' && entry !== null ? (entry as Sent) : {}))
  const targets = sent.flatMap(({ kind, entry }) => (kind === 'void' && typeof entry === 'string' ? [low(entry)] : []))
  const ids = sent.flatMap(({ id }) => (typeof id === 'string' ? [low(id)] : []))
  const there = await book.store.stored([...targets, ...ids])
  const held = await book.store.held([...targets, ...ids])
  const ownersAdditives = sent.some(({ additive }) => additive !== undefined) ? await dosedByOwners(book) : none
  const rights: Right[] = []
  const mine = new Set<string>()
  for (const one of sent) {
    const id = typeof one.id === 'string' ? low(one.id) : ''
    // What was taken once is asked again: nothing is written then, whoever asks.
    if (there.has(id) || held.has(id)) {
      rights.push(free)
      continue
    }
    const { author, hold } = await authorOf({ identity, people, now }, one)
    const role = identity.role ?? 'operator'
    const targetId = typeof one.entry === 'string' ? low(one.entry) : ''
    const target = {
      stored: there.get(targetId) ?? null,
      isMine:
        mine.has(targetId) ||
        (author !== null && readEnvelope(held.get(targetId)?.envelope ?? null)?.person === author),
    }
    const right = rightTo(one, { role, author, target, now, ownersAdditives })
    rights.push({ author, fault: right.fault, hold: hold ?? right.hold })
    if (right.fault === null) mine.add(id)
  }
  return rights
}

const low = (id: string) => id.toLowerCase()

/** A device writes in nobody else's name, unless they said on it who they are. */
async function authorOf(
  { identity, people, now }: { identity: Identity; people: People; now: Date },
  { by }: Sent,
): Promise<{ author: string | null; hold: string | null }> {
  const { person, token } = identity
  const own = person?.id ?? null
  if (isLate(identity, now)) return { author: own, hold: 'it came from an account that is closed' }
  if (typeof by !== 'string' || by === own || !(await people.isPerson(by))) return { author: own, hold: null }
  const writer = await people.person(by)
  if (token?.kind === 'shared' && (await people.hasSwitched(token.id, by))) {
    return { author: by, hold: writer.closedAt === null ? null : `the account of ${writer.name} is closed` }
  }
  return {
    author: own,
    hold: `it is written in the name of ${writer.name}, and ${person?.name ?? token?.name ?? 'somebody else'} sent it`,
  }
}

interface Circumstances {
  role: Role
  author: string | null
  target: { stored: StoredEntry | null; isMine: boolean }
  now: Date
  ownersAdditives: ReadonlySet<string>
}

const none: ReadonlySet<string> = new Set()

/** Names and ids of the additives that the shop lets nobody but an owner dose. */
async function dosedByOwners(book: Book): Promise<ReadonlySet<string>> {
  const { shop } = await book.present()
  const theirs = (shop.additives ?? []).filter(({ who }) => who === 'owner')
  return new Set(theirs.flatMap(({ id, name }) => [id, name]))
}

function rightTo(sent: Sent, { role, author, target, now, ownersAdditives }: Circumstances): Omit<Right, 'author'> {
  const kind = typeof sent.kind === 'string' ? sent.kind : ''
  const isKeeper = reaches(role, 'keeper')
  if (kind === 'void') return voidRight(sent, { isKeeper, author, target, now })
  const dosed = sent.additive as { id?: unknown; name?: unknown } | null | undefined
  const isOwners = [dosed?.id, dosed?.name].some((one) => typeof one === 'string' && ownersAdditives.has(one))
  if (isOwners && !reaches(role, 'owner')) {
    return refused('/additive', 'an additive that the shop keeps for its owners', 'somebody with the role owner')
  }
  if (isKeeper) return pass
  if (kind === 'signoff' && typeof sent.job === 'string' && typeof sent.step === 'string' && isKeepersStep(sent.step)) {
    return refused('/step', JSON.stringify(sent.step), 'somebody with the role keeper: this step is theirs to sign')
  }
  if (keeperKinds.includes(kind)) return refused('/kind', JSON.stringify(kind), 'somebody with the role keeper')
  if (sent.additive !== undefined) {
    return refused(
      '/additive',
      'an additive',
      'somebody with the role keeper: additives and biocides are theirs to dose',
    )
  }
  const isKnown = kind === '' || (entryKinds as readonly string[]).includes(kind)
  return isKnown ? pass : { fault: null, hold: `this version knows no entry of kind "${kind}"` }
}

const pass = { fault: null, hold: null }
const refused = (pointer: string, found: string, expected: string) => ({
  fault: { pointer, found, expected },
  hold: null,
})

function voidRight(
  { entry, reason }: Sent,
  {
    isKeeper,
    author,
    target: { stored, isMine },
    now,
  }: Omit<Circumstances, 'role' | 'ownersAdditives'> & { isKeeper: boolean },
): Omit<Right, 'author'> {
  const isOwn = isMine || (stored !== null && author !== null && readEnvelope(stored.envelope)?.person === author)
  const isFresh = stored === null || now.getTime() - Date.parse(stored.receivedAt) <= ownVoidMs
  if (isOwn && isFresh) return pass
  if (!isKeeper && stored === null && !isMine) {
    return { fault: null, hold: 'the entry it withdraws has not arrived here' }
  }
  if (!isKeeper) {
    const expected = isOwn
      ? 'an entry of the last 24 hours; older ones are withdrawn by a keeper'
      : 'an entry of your own; those of others are withdrawn by a keeper'
    return refused('/entry', JSON.stringify(entry), expected)
  }
  if (typeof reason === 'string' && reason.trim() !== '') return pass
  return refused('/reason', 'nothing', 'why the entry of somebody else is withdrawn')
}
