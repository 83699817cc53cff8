/**
 * The example shop's year walked through by its list: of every kind of line that comes up one is finished with the entries that its own button or its
 * page writes, and is off the list. What was written is withdrawn again, so that the days after are as they were.
 */
import { afterAll, beforeAll, expect, test } from 'vitest'
import { exampleBook } from '../bench/today-year.ts'
import { observedSince } from '../packages/book/src/diagnosis/observed.ts'
import { readCalendar } from '../packages/book/src/guidance/read-calendar.ts'
import { readJob } from '../packages/book/src/jobs/read-jobs.ts'
import { readSamples } from '../packages/book/src/samples/read-samples.ts'
import { testId } from '../packages/book/src/testing.ts'
import type { SumpItem, Today, TodayDue } from '../packages/book/src/today/today.ts'
import { readUpkeep } from '../packages/book/src/upkeep/read-upkeep.ts'

const hourMs = 3_600_000
const dayMs = 24 * hourMs

let example: Awaited<ReturnType<typeof exampleBook>>
beforeAll(async () => {
  example = await exampleBook('2026-11-28T10:00:00+01:00')
}, 60_000)
afterAll(() => example.close())

type Fields = Record<string, unknown>

/** `test:mill7:ph` and `test:tc1:ph` are of one kind, whatever is tested. */
function kindOf({ key, kind, about }: TodayDue): string {
  const [first = '', second = ''] = key.split(':')
  if (first === 'test') return second === 'round' ? 'tests of a round' : 'tests of a sump'
  if (first === 'upkeep') return `${kind} of ${about?.kind ?? 'a sump'}`
  return ['finding', 'stock', 'waste'].includes(first) ? `${first}: ${second}` : first
}

const itemsOf = ({ items, round, later, putOff }: Today) =>
  [items, round?.items, later?.items, putOff.items].flatMap((some) => some ?? [])
const dueOf = ({ due, later, putOff }: Today) => [due, later?.due, putOff.due].flatMap((some) => some ?? [])

/** A good result of each test that the calendar asks for. */
const goodTest: Readonly<Record<string, Fields>> = {
  senses: { kind: 'observation', signs: [] },
  ph: { kind: 'reading', ph: 9.2 },
  nitrite: { kind: 'reading', nitrite: { low: 0, high: 1 } },
  hardness: { kind: 'reading', hardness: { low: 120, high: 250 } },
  bacteria: { kind: 'reading', pending: true, method: 'dip slide' },
}

/** What the page of a duty writes. */
async function finishDue({ key, sump, about, finish }: TodayDue, at: Date): Promise<Fields[]> {
  const { book, document } = example
  const subject = { ...(sump === null ? {} : { sump }), ...(about === null ? {} : { about }) }
  if (finish !== null) return [{ ...subject, ...finish }]
  const [first, second = '', third = '', ...rest] = key.split(':')
  switch (`${first}:${second}`) {
    case 'finding:ph':
      return [{ ...subject, ...goodTest.ph }]
    case 'finding:bacteria':
      return [{ ...subject, kind: 'reading', bacteria: { below: 1000 } }]
    case 'stock:late':
      return [{ ...subject, kind: 'receipt', fluid: about!.id, lot: 'N-1', litres: 400 }]
    case 'stock:old':
      return [{ ...subject, kind: 'issue', fluid: about!.id, lot: rest.join(':'), litres: 600, note: 'Set apart' }]
    case 'stock:count':
      return [{ ...subject, kind: 'check', found: 400 }]
    case 'waste:term':
    case 'waste:full': {
      const { stream, code, capacity } = document.wasteContainers.find(({ id }) => id === about!.id)!
      return [{ ...subject, kind: 'pickup', stream, code, litres: capacity, document: 'N-2026-900' }]
    }
    case 'waste:document':
      return [{ ...subject, kind: 'check', document: 'N-2026-901', answers: third }]
  }
  switch (first) {
    case 'test': {
      const calendar = await book.ask((parts) => readCalendar(parts, { at }))
      const asked = third.split('+')
      const sumps = calendar.sumps.filter((one) => second === 'round' || one.sump === sump)
      return sumps.flatMap((one) =>
        one.tests
          .filter(({ test, isDue }) => isDue && asked.includes(test))
          .map(({ test }) => ({ sump: one.sump, ...goodTest[test] })),
      )
    }
    case 'health': {
      const since = new Date(at.getTime() - 60 * dayMs).toISOString()
      const seen = await observedSince(book.store, { since, until: at.toISOString(), sump: sump! })
      const entries = seen.filter(({ toFollowUp }) => toFollowUp.length > 0).map(({ entry }) => entry)
      return [{ sump, kind: 'verdict', entries, answer: 'Occupational health has seen it' }]
    }
    case 'slide':
      return [{ sump, kind: 'signoff', job: second, step: 'later-slide', values: { bacteria: { below: 1000 } } }]
    case 'job': {
      const { steps } = await book.ask((parts) => readJob(parts, second, { at }))
      const values = { freshPh: 9.2, rinsePh: 9.1, look: 'clear', smell: 'none' }
      return steps
        .filter(({ isDone, id }) => !isDone && id !== 'later-slide')
        .map(({ id }) => ({ sump, kind: 'signoff', job: second, step: id, values: id === 'rinse-check' ? values : {} }))
    }
    case 'result':
    case 'results': {
      const { pending } = await book.ask((parts) => readSamples(parts, { at }))
      return pending
        .filter(({ id, method, state }) => id === second || `${method} ${state}` === `${second} ${third}`)
        .map((sample) => ({
          ...{ sump: sample.sump, at: sample.at, readAt: at.toISOString(), kind: 'reading', answers: sample.id },
          ...{ method: sample.method, bacteria: { low: 1000, high: 10_000 } },
        }))
    }
    case 'upkeep': {
      const { tasks } = await book.ask((parts) => readUpkeep(parts, { at }))
      const task = tasks.find(({ id }) => id === second)!
      const found: Readonly<Record<string, Fields>> = { check: { zero: 0, brix: 8 }, analysis: { hardness: 255 } }
      return [{ ...subject, kind: task.counts ?? 'upkeep', ...found[task.counts ?? ''] }]
    }
    default:
      throw new RangeError(`nobody knows how ${key} is finished`)
  }
}

/** What the line of a sump leads to: a pour as the recipe has it, a reading, or what settles a doubt. */
function finishItem({ sump, condition, recipe, expected, volume, doubts, bench }: SumpItem): Fields[] {
  const level = { volume: Math.round(volume?.mean ?? bench.fillVolume ?? 0), pumps: 'stopped' }
  const brix = Math.round(5 * (expected?.brix.mean ?? 6)) / 5
  switch (condition) {
    case 'unread':
    case 'measure-first':
      return [{ sump, kind: 'reading', brix, ...level }]
    case 'doubt':
      return [{ sump, kind: 'verdict', entries: doubts.flatMap(({ entries }) => entries), answer: 'So it was' }]
    case 'over-full':
      return [{ sump, kind: 'drawoff', volume: Math.ceil((volume?.mean ?? 0) - (bench.fillVolume ?? 0)) }]
    default: {
      const out = recipe.drawOff > 0 ? [{ sump, kind: 'drawoff', volume: recipe.drawOff }] : []
      if (recipe.add === null) return [{ sump, kind: 'reading', brix, ...level }]
      const { volume: litres, strength, waters } = recipe.add
      const water = waters[0]?.id
      return [...out, { sump, kind: 'addition', volume: litres, strength, ...(water === undefined ? {} : { water }) }]
    }
  }
}

const everything = [
  ...['below-suction', 'doubt', 'lean', 'low-level', 'measure-first', 'rich', 'unread'],
  ...[
    'finding: bacteria',
    'finding: ph',
    'health',
    'job',
    'result',
    'results',
    'slide',
    'tests of a round',
    'tests of a sump',
  ],
  ...['check of instrument', 'check of mixer', 'stock: old', 'stock: order', 'upkeep of a sump'],
  ...['waste: document', 'waste: full', 'waste: term'],
]

let written = 5000

/** Writes entries a minute apart, asks whether the line still stands, and withdraws them. */
async function isOffAfter(entries: readonly Fields[], at: Date, stands: (today: Today) => boolean): Promise<boolean> {
  const { book } = example
  const ids = []
  for (const fields of entries) {
    const id = testId(written++)
    ids.push(id)
    await book.put({ id, by: 'p1', at: new Date(at.getTime() + ids.length * 60_000).toISOString(), ...fields })
  }
  const after = await book.today({ at: new Date(at.getTime() + (ids.length + 1) * 60_000) })
  for (const entry of ids) {
    await book.put({
      id: testId(written++),
      at: at.toISOString(),
      by: 'p1',
      kind: 'void',
      about: { kind: 'shop' },
      entry,
    })
  }
  return !stands(after)
}

/** Mornings of the whole year, and days on which a machine is being cleaned out, somebody's skin itched, and the last. */
function mornings(): number[] {
  const { document, first, last } = example
  const special = document.entries
    .filter(({ kind, step, signs }) => step === 'sludge' || (kind === 'observation' && `${signs}`.includes('skin')))
    .map(({ at }) => Date.parse(at) + 10 * 60_000)
  const regular = Array.from(
    { length: Math.floor((last - first) / (23 * dayMs)) },
    (_, n) => first + (23 * n + 12) * dayMs + 9 * hourMs,
  )
  return [...regular, ...special, last - hourMs].sort((a, b) => a - b)
}

test('one of every kind of line that the year brings up is off the list once its entry is written', {
  timeout: 300_000,
}, async () => {
  const { book } = example
  const done = new Set<string>()
  const stuck: string[] = []
  for (const ms of mornings()) {
    const at = new Date(ms)
    const today = await book.today({ at })
    for (const item of itemsOf(today)) {
      if (done.has(item.condition)) continue
      done.add(item.condition)
      const isOff = await isOffAfter(finishItem(item), at, (after) =>
        itemsOf(after).some(({ key }) => key === item.key),
      )
      if (!isOff) stuck.push(`${at.toISOString()} ${item.key} ${item.words.headline}`)
    }
    for (const line of dueOf(today)) {
      const kind = kindOf(line)
      if (done.has(kind)) continue
      done.add(kind)
      const isOff = await isOffAfter(await finishDue(line, at), at, (after) =>
        dueOf(after).some(({ key }) => key === line.key),
      )
      if (!isOff) stuck.push(`${at.toISOString()} ${line.key} ${line.headline}`)
    }
  }
  expect(stuck).toEqual([])
  // It is no walk past an empty list: everything that the example has to show came up.
  expect([...done].sort()).toEqual(expect.arrayContaining(everything))
})
