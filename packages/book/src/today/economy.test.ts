import { expect, test } from 'vitest'
import type { Flickering } from './condition.ts'
import type { Due } from './due.ts'
import { type EconomyInput, newPerShift, placesOf, rosterOf, shareOut } from './economy.ts'
import type { SumpThen } from './sump-then.ts'
import type { Condition, SumpItem } from './today.ts'

const hour = 3_600_000
const day = 24 * hour
/** Shifts of one day each; the one that runs began at 6:00 of day 10, and it is 10:00. */
const began = [10, 9, 8, 7].map((n) => n * day + 6 * hour)
const at = 10 * day + 10 * hour

const item = (sump: string, condition: Condition, more: Partial<SumpItem> = {}) =>
  ({ sump, name: sump, condition, dataAt: null, nextCheck: null, ...more }) as SumpItem
const stood = (condition: Condition, more: Partial<SumpThen> = {}): SumpThen => ({
  condition,
  byEnd: condition,
  clearOf: new Set<Flickering>(condition === 'in-order' ? ['lean', 'rich', 'low-level'] : []),
  rank: [0, 0],
  ...more,
})
const due = (key: string, dueOn: string, more: Partial<Due> = {}): Due => ({
  key,
  kind: 'upkeep',
  sump: null,
  about: null,
  name: key,
  headline: key,
  why: '',
  dueOn,
  consequence: 6,
  exempt: false,
  cautions: [],
  page: '/',
  finish: null,
  ...more,
})
const dayText = (n: number) => new Date(n * day).toISOString().slice(0, 10)

/** @param then by shift, youngest first: what stood where; who is not named was in order */
function shared(
  items: SumpItem[],
  more: Omit<Partial<EconomyInput>, 'starts'> & {
    places?: ReadonlySet<string>
    starts?: Record<string, SumpThen>[]
  } = {},
) {
  const { starts = [], places, ...rest } = more
  const names = new Set([...items.map(({ sump }) => sump), ...starts.flatMap((one) => Object.keys(one))])
  const input: EconomyInput = {
    at,
    began,
    items,
    due: [],
    sumpCount: 40,
    dueThen: [],
    dayStart: (text) => Date.parse(`${text}T00:00:00Z`),
    pouredAt: new Map(),
    snoozed: new Map(),
    taken: new Set(),
    ...rest,
    starts: began.map((_, i) => new Map([...names].map((name) => [name, starts[i]?.[name] ?? stood('in-order')]))),
  }
  return shareOut({ ...input, places: places ?? rosterOf(input) })
}
const names = (lines: readonly { sump: string | null; name: string }[]) => lines.map(({ name }) => name)
const many = (count: number, condition: Condition) =>
  Array.from({ length: count }, (_, n) => item(`s${String(n + 1).padStart(2, '0')}`, condition))
const standing = (items: SumpItem[], more: Partial<SumpThen> = {}) =>
  Object.fromEntries(items.map(({ sump, condition }) => [sump, stood(condition, more)]))

test('six new things are shown, what is beyond waits with its lines whole', () => {
  const items = many(9, 'lean')
  const { items: shown, later } = shared(items, { starts: [standing(items)] })
  expect(names(shown)).toEqual(['s01', 's02', 's03', 's04', 's05', 's06'])
  expect(shown.every(({ isNew }) => isNew)).toBe(true)
  expect(names(later.items)).toEqual(['s07', 's08', 's09'])
})

test('seven are one too many, six are not', () => {
  const six = many(6, 'rich')
  expect(shared(six, { starts: [standing(six)] }).later.items).toEqual([])
  const seven = many(7, 'rich')
  expect(shared(seven, { starts: [standing(seven)] }).later.items).toHaveLength(1)
})

test('the gravest have the places', () => {
  const items = [...many(6, 'low-level'), item('worst', 'lean')]
  const starts = { ...standing(many(6, 'low-level'), { rank: [6, 0] }), worst: stood('lean', { rank: [2, 0.1] }) }
  const { items: shown, later } = shared(items, { starts: [starts] })
  expect(names(shown)).toContain('worst')
  expect(names(later.items)).toEqual(['s06'])
})

test('what is exempt is shown whatever else there is, and takes nobody’s place', () => {
  const items = [item('pump', 'below-suction'), item('full', 'over-full'), ...many(8, 'lean')]
  const { items: shown, later } = shared(items, { starts: [standing(items)] })
  expect(names(shown)).toEqual(['pump', 'full', 's01', 's02', 's03', 's04', 's05', 's06'])
  expect(later.items).toHaveLength(2)
})

test('what stood there when the shift before began is no news, and takes no place', () => {
  const old = many(10, 'lean')
  const fresh = item('fresh', 'lean')
  const { items: shown } = shared([...old, fresh], {
    starts: [standing([...old, fresh]), standing(old), standing(old)],
  })
  expect(shown).toHaveLength(11)
  expect(shown.filter(({ isNew }) => isNew).map(({ sump }) => sump)).toEqual(['fresh'])
  expect(shown[0]).toMatchObject({ isNew: false, since: new Date(began[2]!).toISOString() })
})

test('what flickers around its limit does not come back as new, what came well back inside does', () => {
  const lean = item('a', 'lean')
  const near = stood('in-order', { clearOf: new Set<Flickering>(['rich', 'low-level']) })
  const flickering = shared([lean], { starts: [{ a: near }, { a: stood('lean') }] })
  expect(flickering.items).toMatchObject([{ isNew: false, since: new Date(began[1]!).toISOString() }])
  const back = shared([lean], { starts: [{ a: stood('in-order') }, { a: stood('lean') }] })
  // Nobody touched it and it came by itself: in a large shop it waits for the next list.
  expect(back.later.items).toMatchObject([{ isNew: true }])
})

test('once it was poured, the same want is a new one', () => {
  const lean = item('a', 'lean')
  const starts = [{ a: stood('lean') }, { a: stood('lean') }]
  expect(shared([lean], { starts }).items[0]!.isNew).toBe(false)
  const pouredAt = new Map([['a', [began[1]! + 3 * hour]]])
  expect(shared([lean], { starts, pouredAt }).items[0]!.isNew).toBe(true)
})

test('a sump that becomes worse is news, one that becomes better is not', () => {
  const starts = [{ a: stood('low-level') }, { a: stood('low-level') }]
  expect(shared([item('a', 'lean')], { starts, sumpCount: 1 }).items[0]!.isNew).toBe(true)
  const worse = [{ a: stood('lean') }, { a: stood('lean') }]
  expect(shared([item('a', 'low-level')], { starts: worse }).items[0]!.isNew).toBe(false)
})

/** Who has places: four from the shift's beginning, and sumps as they were written about, an hour apart. */
async function placesWith(touched: readonly (readonly [string, Condition])[], more: Partial<EconomyInput> = {}) {
  const roster = many(4, 'lean')
  const all = { ...standing(roster), ...Object.fromEntries(touched.map(([sump]) => [sump, stood('in-order')])) }
  const input = {
    ...{ at, began, items: [], due: [], sumpCount: 40, dueThen: [], dayStart: () => 0 },
    ...{ pouredAt: new Map(), snoozed: new Map(), taken: new Set<string>() },
    starts: began.map((_, i) => new Map(Object.entries(i === 0 ? all : {}))),
    ...more,
  }
  const touches = touched.map(([sump], n) => ({ sump, ms: began[0]! + (n + 1) * hour }))
  const found = new Map(touched.map(([, condition], n) => [touches[n], stood(condition)]))
  return [...(await placesOf(input, touches, async (touch) => found.get(touch)))].slice(4)
}

test('what is found during a shift takes what is left of the six, in the order in which it was found', async () => {
  const found = [
    ['first', 'low-level'],
    ['second', 'rich'],
    ['third', 'lean'],
  ] as const
  expect(await placesWith(found)).toEqual(['first', 'second'])
})

test('a sump that wants nothing right after it was written about takes no place, nor does an exempt one', async () => {
  const found = [
    ['fine', 'in-order'],
    ['pump', 'below-suction'],
    ['lean', 'lean'],
  ] as const
  expect(await placesWith(found)).toEqual(['lean'])
})

test('what is found with a place is shown, what is found without one waits', () => {
  const items = [item('first', 'lean'), item('second', 'lean')]
  const { items: shown, later } = shared(items, { places: new Set(['first']) })
  expect([names(shown), names(later.items)]).toEqual([['first'], ['second']])
})

test('what will come to want something by the end of the shift has a place kept, at most half of what is left', () => {
  const coming = Object.fromEntries(many(5, 'lean').map(({ sump }) => [sump, stood('in-order', { byEnd: 'lean' })]))
  expect(names(shared(many(5, 'lean'), { starts: [coming] }).items)).toEqual(['s01', 's02', 's03'])
})

test('what comes by itself and was not foreseen waits for the next list', () => {
  const coming = { a: stood('in-order', { byEnd: 'lean' as const }) }
  expect(names(shared([item('a', 'lean')], { starts: [coming] }).items)).toEqual(['a'])
  expect(names(shared([item('a', 'lean')]).later.items)).toEqual(['a'])
})

test('a shop with no more than six things waits with nothing', () => {
  expect(names(shared([item('a', 'lean')], { sumpCount: newPerShift }).items)).toEqual(['a'])
})

test('sumps that are merely due to be read are one line where they are more than three, and never news', () => {
  const three = shared(many(3, 'unread'))
  expect(three.round).toEqual([])
  expect(three.items.map(({ isNew }) => isNew)).toEqual([false, false, false])
  const four = shared(many(4, 'unread'))
  expect(names(four.round)).toEqual(['s01', 's02', 's03', 's04'])
  expect(four.items).toEqual([])
})

const snooze = { entry: 'e1', by: 'p1', why: 'new strainer on its way', until: '1970-01-20T00:00:00.000Z', at }

test('what is put off is neither shown nor waiting, but visible with reason and end', () => {
  const { items: shown, later, putOff } = shared([item('a', 'lean')], { snoozed: new Map([['lean:a', snooze]]) })
  expect([shown, later.items]).toEqual([[], []])
  expect(putOff.items).toMatchObject([
    { key: 'lean:a', snoozed: { entry: 'e1', by: 'p1', why: 'new strainer on its way', until: snooze.until } },
  ])
})

test('putting off one want does not put off a graver one, nor anything exempt', () => {
  const snoozed = new Map([
    ['low-level:a', snooze],
    ['below-suction:a', snooze],
  ])
  expect(names(shared([item('a', 'lean')], { snoozed, sumpCount: 1 }).items)).toEqual(['a'])
  const { items: shown, putOff } = shared([item('a', 'below-suction')], { snoozed })
  expect(shown).toMatchObject([{ exempt: true, snoozed: null }])
  expect(putOff.items).toEqual([])
})

test('duties share the six with the sumps, by their consequence', () => {
  const items = many(5, 'lean')
  const duties = [due('slide', dayText(10), { consequence: 1 }), due('strainer', dayText(10))]
  const {
    items: shown,
    due: shownDue,
    later,
  } = shared(items, {
    starts: [standing(items, { rank: [2, 0] })],
    due: duties,
    dueThen: duties,
  })
  expect([shown.length, names(shownDue), names(later.due)]).toEqual([5, ['slide'], ['strainer']])
})

test('a duty of the shift before is no news, an exempt one is always shown, one put off waits', () => {
  const items = many(8, 'lean')
  const duties = [
    due('old', dayText(9)),
    due('lawful', dayText(10), { exempt: true }),
    due('off', dayText(9)),
    due('new', dayText(10), { consequence: 9 }),
  ]
  const snoozed = new Map([
    ['off', snooze],
    ['lawful', snooze],
  ])
  const {
    due: shown,
    later,
    putOff,
  } = shared(items, {
    starts: [standing(items)],
    due: duties,
    dueThen: duties,
    snoozed,
  })
  expect(shown).toMatchObject([
    { key: 'old', isNew: false },
    { key: 'lawful', isNew: true, snoozed: null },
  ])
  expect([names(later.due), names(putOff.due)]).toEqual([['new'], ['off']])
})

test('a duty that comes up during a shift stands on the list and is not announced; an exempt one is', () => {
  const items = many(8, 'lean')
  const { due: shown, later } = shared(items, {
    starts: [standing(items)],
    due: [due('came-up', dayText(10)), due('lawful', dayText(10), { exempt: true })],
    dueThen: [],
  })
  expect(shown).toMatchObject([
    { key: 'came-up', isNew: false },
    { key: 'lawful', isNew: true },
  ])
  expect(later.due).toEqual([])
})

test('what somebody else has taken upon himself is no news', () => {
  const { items: shown } = shared([item('a', 'lean')], { starts: [{ a: stood('lean') }], taken: new Set(['pour:a']) })
  expect(shown).toMatchObject([{ isNew: false }])
})

test('whatever comes, no list shows more than six new things that are not exempt, and nothing is lost', () => {
  const conditions: Condition[] = ['below-suction', 'lean', 'rich', 'doubt', 'low-level', 'measure-first', 'unread']
  // A generator of Park and Miller, so that a failure comes again.
  let state = 7
  const below = (bound: number) => {
    state = (state * 48_271) % 2_147_483_647
    return state % bound
  }
  for (let run = 0; run < 300; run++) {
    const items = Array.from({ length: 1 + below(30) }, (_, n) => item(`s${n}`, conditions[below(7)]!))
    const starts = began.map(() =>
      Object.fromEntries(items.map(({ sump }) => [sump, stood(([...conditions, 'in-order'] as const)[below(8)]!)])),
    )
    const { items: shown, later, round, putOff } = shared(items, { starts })
    const fresh = shown.filter(({ isNew, exempt }) => isNew && !exempt)
    expect(fresh.length, `run ${run}`).toBeLessThanOrEqual(newPerShift)
    const all = [...shown, ...later.items, ...round, ...putOff.items]
    expect(new Set(names(all)).size).toBe(items.length)
    expect(later.items.some(({ exempt }) => exempt)).toBe(false)
  }
})

test('what nothing may put off and cannot wait stands before the pours', () => {
  const { due: shown } = shared([], {
    due: [
      due('skin', dayText(10), { exempt: true, consequence: 0 }),
      due('nitrite', dayText(10), { exempt: true, consequence: 1 }),
      due('container', dayText(10), { exempt: true, consequence: 2 }),
      due('slide', dayText(10), { consequence: 1 }),
    ],
  })
  expect(shown.filter(({ atOnce }) => atOnce).map(({ key }) => key)).toEqual(['skin', 'nitrite'])
})
