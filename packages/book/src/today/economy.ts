import { consequence, type Flickering, isExempt, isListed } from './condition.ts'
import type { Due } from './due.ts'
import type { SumpThen } from './sump-then.ts'
import type { Condition, Snoozed, SumpItem, TodayDue, TodayItem } from './today.ts'
import type { Touched } from './touched.ts'

/** So many new things one person is shown in a shift; what is exempt comes on top. */
export const newPerShift = 6
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
  dueThen: readonly Due[]
  /** The beginning of a day of the shop, milliseconds. */
  dayStart: (day: string) => number
  /** Sumps that were written about in the shift that runs. */
  touched: ReadonlyMap<string, Touched>
  /** When each sump was poured into, or out of. */
  pouredAt: ReadonlyMap<string, readonly number[]>
  /** What is put off, by key. */
  snoozed: ReadonlyMap<string, Snoozed & { at: number }>
  /** Keys of what others have taken upon themselves: it is no news to the one who asks. */
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
 * six; after these what will come to want something by the shift's end. What turns up during the shift fills what is left of the
 * six in the order in which it was first written about, each sump that was acted upon having had its place; what has no place
 * waits in `later`. What stood on the list when the shift before began is not new, and what flickers around a limit has
 * stood there all along until it was poured into or came well back inside. Nothing exempt ever waits.
 */
export function shareOut(input: EconomyInput): Economy {
  const { items, due, sumpCount } = input
  const places = rosterOf(input)
  const isSmall = sumpCount + due.length <= newPerShift
  const economy: Economy = {
    items: [],
    due: [],
    round: [],
    later: { items: [], due: [] },
    putOff: { items: [], due: [] },
  }
  const unread: TodayItem[] = []
  const fresh: { item: TodayItem; touchedAt: number }[] = []
  for (const item of items) {
    const standing = standingOf(item, input)
    const line = { ...item, ...standing }
    if (standing.snoozed !== null) economy.putOff.items.push(line)
    else if (item.condition === 'unread') unread.push(line)
    else if (standing.exempt || !standing.isNew || isSmall || places.has(item.sump)) economy.items.push(line)
    else fresh.push({ item: line, touchedAt: input.touched.get(item.sump)?.firstAt ?? Number.POSITIVE_INFINITY })
  }
  ;(unread.length > fewToRead ? economy.round : economy.items).push(...unread)
  let room = newPerShift - places.size - actedOnBeside(places, input, fresh)
  for (const one of due) {
    const line = dueStanding(one, input)
    const isShown = one.exempt || !line.isNew || isSmall || places.has(one.key)
    if (line.snoozed !== null) economy.putOff.due.push(line)
    else if (isShown || room > 0) {
      economy.due.push(line)
      if (!isShown) room -= 1
    } else economy.later.due.push(line)
  }
  for (const { item, touchedAt } of fresh.toSorted((a, b) => a.touchedAt - b.touchedAt)) {
    const hasPlace = Number.isFinite(touchedAt) && room > 0
    if (hasPlace) room -= 1
    ;(hasPlace ? economy.items : economy.later.items).push(item)
  }
  return economy
}

/** The sumps and duties that have a place on the list of the shift: sumps by their id, duties by their key. */
function rosterOf({ starts, dueThen, began, snoozed, dayStart, pouredAt }: EconomyInput): Set<string> {
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
  return new Set([...inOrder.map(({ id }) => id), ...coming].slice(0, newPerShift))
}

const isCapped = (condition: Condition) => isListed(condition) && !isExempt(condition) && condition !== 'unread'

const isNewDue = (dueOn: string, began: readonly number[], dayStart: EconomyInput['dayStart']) =>
  dayStart(dueOn) > (began[1] ?? Number.NEGATIVE_INFINITY)

/** Sumps without a place that had one anyway in this shift, by what was done at them; those that still ask for one are counted there. */
function actedOnBeside(
  places: ReadonlySet<string>,
  input: EconomyInput,
  fresh: readonly { item: TodayItem }[],
): number {
  const asking = new Set(fresh.map(({ item }) => item.sump))
  const { touched, starts, began, pouredAt } = input
  const stoodAlready = (id: string) => {
    const condition = starts[0]?.get(id)?.condition
    return (
      condition !== undefined &&
      isListed(condition) &&
      heldSince(id, condition, { starts, began, pouredAt, from: 1, before: began[0] ?? 0 }) !== null
    )
  }
  const acted = [...touched].filter(
    ([id, { isActedOn }]) => isActedOn && !places.has(id) && !asking.has(id) && !stoodAlready(id),
  )
  return acted.length
}

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
    isNew:
      condition !== 'unread' && !taken.has(key) && (held === null || held > (began[1] ?? Number.NEGATIVE_INFINITY)),
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
