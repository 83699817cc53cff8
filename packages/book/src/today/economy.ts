import { pourKey } from '../jobs/claims.ts'
import { consequence, type Flickering, isExempt, isListed } from './condition.ts'
import type { Due } from './due.ts'
import type { DueThen } from './shift-starts.ts'
import type { SumpThen } from './sump-then.ts'
import type { Condition, Snoozed, SumpItem, TodayDue, TodayItem } from './today.ts'
import type { Touch } from './touched.ts'

/** So many new things one person is shown in a shift; what is exempt comes on top. */
export const newPerShift = 6
/** Duties of this consequence and graver that nothing may put off stand before the pours. */
const gravest = 1

/** So many sumps that are merely due to be read stand on the list one by one; more of them are one line, the round. */
export const fewToRead = 3

/** What the list is shared out by; all of it follows from the records and the time of asking. */
export interface EconomyInput {
  /** Milliseconds since 1970-01-01 UTC. */
  at: number
  /** When shifts began, youngest first: the one that runs, and those before it as far as is looked back. */
  began: readonly number[]
  /** Sumps that want something, gravest first. */
  items: readonly SumpItem[]
  due: readonly Due[]
  /** How many sumps the shop has. */
  sumpCount: number
  /** Sumps as they stood when those shifts began. */
  starts: readonly ReadonlyMap<string, SumpThen>[]
  /** What else was due when the shift began that runs. */
  dueThen: readonly DueThen[]
  /** The beginning of a day of the shop, milliseconds. */
  dayStart: (day: string) => number
  /** When each sump was poured into, or out of. */
  pouredAt: ReadonlyMap<string, readonly number[]>
  /** What is put off, by key. */
  snoozed: ReadonlyMap<string, Snoozed & { at: number }>
  /** Claims of others: what they have taken upon themselves: it is no news to the one who asks. */
  taken: ReadonlySet<string>
}

/** The list, shared out. */
export interface Economy {
  items: TodayItem[]
  due: TodayDue[]
  round: TodayItem[]
  later: { items: TodayItem[]; due: TodayDue[] }
  putOff: { items: TodayItem[]; due: TodayDue[] }
}

/** Names what a sump's line is about. */
export const keyOf = (condition: Condition, sump: string) => `${condition}:${sump}`

/**
 * What is shown of the list, and what waits. The list of a shift is made when the shift begins: what is new then, gravest first, up to
 * six ({@link rosterOf}); what people find during the shift takes what is left of the six, in the order in which it was found
 * ({@link placesOf}), and keeps its place when it is seen to. What has no place waits in `later`. What stood on the list when the
 * shift before began is not new, and what flickers around a limit has stood there all along until it was poured into or came
 * well back inside. A duty that comes up during the shift stands on the list without being announced. Nothing exempt ever waits.
 */
export function shareOut(input: EconomyInput & { places: ReadonlySet<string> }): Economy {
  const { items, due, sumpCount, places } = input
  const isSmall = sumpCount + due.length <= newPerShift
  const economy: Economy = {
    items: [],
    due: [],
    round: [],
    later: { items: [], due: [] },
    putOff: { items: [], due: [] },
  }
  const unread: TodayItem[] = []
  for (const item of items) {
    const line = { ...item, ...standingOf(item, input) }
    const isShown = line.exempt || !line.isNew || isSmall || places.has(item.sump)
    if (line.snoozed !== null) economy.putOff.items.push(line)
    else if (item.condition === 'unread') unread.push(line)
    else (isShown ? economy.items : economy.later.items).push(line)
  }
  ;(unread.length > fewToRead ? economy.round : economy.items).push(...unread)
  const stoodAtStart = new Set(input.dueThen.map(({ key }) => key))
  for (const one of due) {
    const line = dueStanding(one, input)
    const isShown = one.exempt || !line.isNew || isSmall || places.has(one.key)
    if (line.snoozed !== null) economy.putOff.due.push(line)
    else if (isShown) economy.due.push(line)
    else if (stoodAtStart.has(one.key)) economy.later.due.push(line)
    // What came up since is no secret, and no news either: the six are given.
    else economy.due.push({ ...line, isNew: false })
  }
  return economy
}

/**
 * Who has a place in this shift: those of the roster, then sumps as they were found to want something new, each by what was
 * known right after it was written about. Nobody who has a place loses it.
 *
 * @param stoodAt a sump right after something was written about it
 */
export async function placesOf(
  input: EconomyInput,
  touches: readonly Touch[],
  stoodAt: (touch: Touch) => Promise<SumpThen | undefined>,
): Promise<Set<string>> {
  const places = rosterOf(input)
  for (const touch of touches) {
    if (places.size >= newPerShift) break
    if (places.has(touch.sump)) continue
    const stood = await stoodAt(touch)
    if (stood === undefined || !isCapped(stood.condition)) continue
    const held = heldSince(touch.sump, stood.condition, { ...input, from: 0, before: touch.ms })
    if (isNewSince(held, input.began)) places.add(touch.sump)
  }
  return places
}

/** The sumps and duties that have a place on the list of the shift: sumps by their id, duties by their key. */
export function rosterOf({ starts, dueThen, began, snoozed, dayStart, pouredAt }: EconomyInput): Set<string> {
  const start = began[0] ?? 0
  const wasPutOff = (key: string) => (snoozed.get(key)?.at ?? Number.POSITIVE_INFINITY) <= start
  const sumps = [...(starts[0] ?? [])]
  const wanting = sumps
    .filter(([id, { condition }]) => isCapped(condition) && !wasPutOff(keyOf(condition, id)))
    .filter(
      ([id, { condition }]) => heldSince(id, condition, { starts, began, pouredAt, from: 1, before: start }) === null,
    )
    .map(([id, { rank }]) => ({ id, rank }))
  const duties = dueThen
    .filter(({ exempt, dueOn, key }) => !exempt && isNewDue(dueOn, began, dayStart) && !wasPutOff(key))
    .map(({ key, consequence: grave }) => ({ id: key, rank: [grave, 0] as const }))
  const coming = sumps
    .filter(([, { condition, byEnd }]) => !isListed(condition) && isCapped(byEnd))
    .map(([id]) => id)
    .sort()
  const inOrder = [...wanting, ...duties].sort(
    (a, b) => a.rank[0] - b.rank[0] || b.rank[1] - a.rank[1] || (a.id < b.id ? -1 : 1),
  )
  const now = inOrder.map(({ id }) => id).slice(0, newPerShift)
  // What comes by itself leaves half of what is left to what people find.
  return new Set([...now, ...coming.slice(0, Math.floor((newPerShift - now.length) / 2))])
}

const isCapped = (condition: Condition) => isListed(condition) && !isExempt(condition) && condition !== 'unread'

const isNewDue = (dueOn: string, began: readonly number[], dayStart: EconomyInput['dayStart']) =>
  dayStart(dueOn) > (began[1] ?? Number.NEGATIVE_INFINITY)

/** Not on the list yet when the shift before began. */
const isNewSince = (held: number | null, began: readonly number[]) =>
  held === null || held > (began[1] ?? Number.NEGATIVE_INFINITY)

function standingOf(item: SumpItem, input: EconomyInput) {
  const { condition, sump, nextCheck, dataAt } = item
  const { at, began, snoozed, taken } = input
  const key = keyOf(condition, sump)
  const exempt = isExempt(condition)
  const held = heldSince(sump, condition, { ...input, from: 0, before: at })
  // When a sump is read next was said days before: its day is no news.
  const since = condition === 'unread' ? Date.parse(nextCheck?.at ?? '') : (held ?? turnedAt(dataAt, began, at))
  return {
    key,
    exempt,
    isNew: condition !== 'unread' && !taken.has(pourKey(sump)) && isNewSince(held, began),
    since: new Date(Number.isFinite(since) ? since : at).toISOString(),
    snoozed: exempt ? null : putOff(snoozed.get(key)),
  }
}

/** What did not hold when the shift began: since its youngest record, or since now where it came by itself. */
function turnedAt(dataAt: string | null, began: readonly number[], at: number): number {
  const record = dataAt === null ? Number.NaN : Date.parse(dataAt)
  return record > (began[0] ?? 0) ? Math.min(record, at) : at
}

function dueStanding(due: Due, { began, dayStart, snoozed, taken }: EconomyInput): TodayDue {
  return {
    ...due,
    atOnce: due.exempt && due.consequence <= gravest,
    isNew: isNewDue(due.dueOn, began, dayStart) && !taken.has(due.key),
    since: new Date(dayStart(due.dueOn)).toISOString(),
    snoozed: due.exempt ? null : putOff(snoozed.get(due.key)),
  }
}

function putOff(snooze: (Snoozed & { at: number }) | undefined): Snoozed | null {
  if (snooze === undefined) return null
  const { entry, by, why, until } = snooze
  return { entry, by, why, until }
}

/**
 * The beginning of the earliest shift looked at since which a sump has been on the list for this or something graver, without a pour
 * in between; null where it was not on it. Where it was only just back on the other side of a limit it had not left.
 */
function heldSince(
  sump: string,
  condition: Condition,
  {
    starts,
    began,
    pouredAt,
    from,
    before,
  }: Pick<EconomyInput, 'starts' | 'began' | 'pouredAt'> & { from: number; before: number },
): number | null {
  let held: number | null = null
  let upTo = before
  for (let i = from; i < began.length; i++) {
    const start = began[i]!
    const stood = starts[i]?.get(sump)
    const wasPoured = pouredAt.get(sump)?.some((ms) => ms > start && ms <= upTo) === true
    if (stood === undefined || wasPoured) return held
    if (isListed(stood.condition) && consequence[stood.condition] <= consequence[condition]) held = start
    else if (!isFlickering(condition) || stood.clearOf.has(condition)) return held
    upTo = start
  }
  return held
}

const isFlickering = (condition: Condition): condition is Flickering =>
  condition === 'lean' || condition === 'rich' || condition === 'low-level'
