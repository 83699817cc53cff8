import type { ShopEvent } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import type { Entry } from '../schema/entries/index.ts'
import { type BaseThing, thingHistory } from '../setup/things.ts'
import { smallShop, testId } from '../testing.ts'
import { calendarOf } from './calendar-of.ts'
import { entryDays } from './journal-days.ts'
import { dayNumber } from './shop-clock.ts'
import type { ShopDay } from './shop-events.ts'
import { freshTranslation } from './translation.ts'

type Sections = Record<string, unknown>
type Written = Record<string, unknown>

const sectionsOf = (file: Sections): BaseThing[] =>
  Object.entries({ fluids: 'fluid', waters: 'water', sumps: 'sump', instruments: 'instrument', meters: 'meter' })
    .flatMap(([section, kind]) =>
      ((file[section] ?? []) as Sections[]).map((body) => ({ kind, id: body.id as string, body })),
    )
    .concat([{ kind: 'shop', id: 'shop', body: file.shop as Sections }])

/** Entries get the ids 1, 2 …; without a time they are of 3 March, 9:30 in Berlin, without a sump of Mill 1. */
const entriesOf = (written: readonly Written[]) =>
  written.map(
    (one, i) =>
      ({
        id: testId(i + 1),
        at: '2026-03-03T09:30:00+01:00',
        ...('about' in one || one.kind === 'void' ? {} : { sump: 's1' }),
        ...one,
      }) as unknown as Entry,
  )

async function daysOf(written: readonly Written[], more: Sections = {}): Promise<ShopDay[]> {
  const entries = entriesOf(written)
  const setups = entries.filter((entry) => entry.kind === 'setup')
  const history = thingHistory(sectionsOf(smallShop(more)), setups)
  const source = entryDays(entries, { history, clock: calendarOf(history).clock })
  const days: ShopDay[] = []
  const all = { from: Number.NEGATIVE_INFINITY, before: Number.POSITIVE_INFINITY }
  for await (const day of source.days(all, freshTranslation())) days.push(day)
  return days
}
const eventsOf = async (written: readonly Written[], more: Sections = {}): Promise<ShopEvent[]> =>
  (await daysOf(written, more)).flatMap(({ events }) => events)
const without = (kind: string) => (events: ShopEvent[]) => events.filter((event) => event.kind !== kind)
const poured = async (written: readonly Written[], more: Sections = {}) =>
  without('setup')(await eventsOf(written, more))

test('at its first event a sump is said what it is like', async () => {
  const [setup, reading] = await eventsOf([{ kind: 'reading', brix: 5, volume: 180 }])
  expect(setup).toEqual({
    kind: 'setup',
    id: testId(1),
    at: dayNumber('2026-03-03') + 9.5 / 24,
    sump: 's1',
    spec: {
      mark: 200,
      capacity: 240,
      minVolume: null,
      holdUp: null,
      group: 'stand-alone',
      fluid: 'f1',
      target: 8,
    },
  })
  expect(reading).toMatchObject({
    kind: 'reading',
    id: testId(1),
    sump: 's1',
    brix: 5,
    seen: 180,
    pumps: 'stopped',
    titration: null,
    resolution: 0.2,
  })
})

test('days are those of the shop’s zone, entries in them in the order of the journal', async () => {
  const days = await daysOf([
    { kind: 'addition', volume: 10, at: '2026-03-03T00:30:00+01:00' },
    { kind: 'reading', brix: 5, at: '2026-03-03T00:30:00+01:00' },
    { kind: 'reading', brix: 4, at: '2026-03-02T22:59:59Z' },
  ])
  expect(days.map(({ day, events }) => [day, events.map(({ kind }) => kind)])).toEqual([
    [dayNumber('2026-03-02'), ['setup', 'reading']],
    [dayNumber('2026-03-03'), ['reading', 'addition']],
  ])
})

test('a sump whose mark was moved is said again from when it was moved, and not before', async () => {
  const days = await daysOf([
    { kind: 'reading', brix: 5, at: '2026-03-01T09:00:00+01:00' },
    {
      kind: 'setup',
      about: { kind: 'sump', id: 's1' },
      changes: { fillVolume: 220 },
      was: { fillVolume: 200 },
      from: '2026-03-02T12:00:00+01:00',
    },
    { kind: 'reading', brix: 5, at: '2026-03-03T09:00:00+01:00' },
  ])
  expect(days.map(({ events }) => events.map(({ kind, at }) => [kind, at]))).toEqual([
    [
      ['setup', dayNumber('2026-03-01') + 9 / 24],
      ['reading', dayNumber('2026-03-01') + 9 / 24],
    ],
    [['setup', dayNumber('2026-03-02') + 0.5]],
    [['reading', dayNumber('2026-03-03') + 9 / 24]],
  ])
  expect(days.flatMap(({ events }) => events.flatMap((e) => (e.kind === 'setup' ? [e.spec.mark] : [])))).toEqual([
    200, 220,
  ])
})

test.each<[string, Written, Record<string, unknown> | null]>([
  ['litres of mix', { volume: 40, strength: 6 }, { amount: 40, strength: 6 }],
  ['concentrate alone', { concentrate: 3 }, { amount: 3, strength: 100 }],
  ['mix with the concentrate that is in it', { volume: 40, concentrate: 2 }, { amount: 40, strength: 5 }],
  ['a fill to the mark', { toMark: true, strength: 6 }, { amount: 'to-mark', strength: 6 }],
  ['an amount that nobody wrote', { strength: 6 }, { amount: null, strength: 6 }],
  ['an additive, which is no mix', { additive: { name: 'biocide', litres: 0.2 } }, null],
  ['water without its strength', { volume: 40 }, { amount: 40, strength: null }],
])('an addition can be %s', async (_, fields, expected) => {
  const events = await poured([{ kind: 'addition', ...fields }])
  if (expected === null) expect(events).toEqual([])
  else expect(events).toMatchObject([{ kind: 'addition', fluid: 'f1', ...expected }])
})

test('a meter pours the difference to its last count; the first count says nothing, one that ran back an unknown amount', async () => {
  const meters = [{ id: 'm1', name: 'Hose', litresPerCount: 10 }]
  const counts = [100, 104, 104, 50, 52.5]
  const events = await poured(
    counts.map((count, i) => ({
      kind: 'addition',
      strength: 5,
      meter: { id: 'm1', count },
      at: `2026-03-03T1${i}:00:00+01:00`,
    })),
    { meters },
  )
  expect(events.map((event) => event.kind === 'addition' && event.amount)).toEqual([40, 0, null, 25])
})

test('a meter goes on from a count that stood beside a volume', async () => {
  const meters = [{ id: 'm1', name: 'Hose', litresPerCount: 1 }]
  const events = await poured(
    [
      { kind: 'addition', volume: 20, meter: { id: 'm1', count: 20 } },
      { kind: 'addition', meter: { id: 'm1', count: 50 }, at: '2026-03-03T11:00:00+01:00' },
    ],
    { meters },
  )
  expect(events).toMatchObject([{ amount: 20 }, { amount: 30 }])
})

test('a water is what it was told to be, from an analysis on what was found, and what it is told later', async () => {
  const at = (hour: number) => `2026-03-03T${hour}:00:00+01:00`
  const tap = { kind: 'addition', volume: 10, water: 'tap' }
  const events = await poured([
    { ...tap, at: at(10) },
    { kind: 'analysis', about: { kind: 'water', id: 'tap' }, hardness: 310, chloride: 40, at: at(11) },
    { ...tap, at: at(12) },
    {
      kind: 'setup',
      about: { kind: 'water', id: 'tap' },
      changes: { hardness: 280 },
      was: { hardness: 260 },
      at: at(13),
    },
    { ...tap, at: at(14) },
  ])
  expect(events.map((event) => event.kind === 'addition' && event.water)).toEqual([
    { hardness: 260, chloride: null },
    { hardness: 310, chloride: 40 },
    { hardness: 280, chloride: 40 },
  ])
})

test('a water nobody named, or that nobody knows, is unknown', async () => {
  const events = await poured([
    { kind: 'addition', volume: 10 },
    { kind: 'addition', volume: 10, water: 'well' },
  ])
  expect(events).toMatchObject([
    { water: { hardness: null, chloride: null } },
    { water: { hardness: null, chloride: null } },
  ])
})

test('a charge brings its fluid and lot; how much stayed is unknown where nobody said', async () => {
  const fluids = [
    { id: 'f1', name: 'Semi 1', brixFactor: 1.6 },
    {
      id: 'f2',
      name: 'Semi 2',
      brixFactor: 2,
      factors: [
        { lot: 'L7', brixFactor: 2.2 },
        { from: '2026-03-04', brixFactor: 2.1 },
      ],
    },
  ]
  const reading = { kind: 'reading', brix: 4 }
  const events = await poured(
    [
      { ...reading, at: '2026-03-03T08:00:00+01:00' },
      { kind: 'charge', volume: 180, strength: 7, fluid: 'f2', lot: 'L7' },
      { ...reading, at: '2026-03-03T10:00:00+01:00' },
      { ...reading, at: '2026-03-03T11:00:00+01:00' },
      { kind: 'charge', volume: 180, fluid: 'f2', heldBack: 20, at: '2026-03-04T09:00:00+01:00' },
      { ...reading, at: '2026-03-04T10:00:00+01:00' },
      { kind: 'addition', volume: 5, at: '2026-03-04T11:00:00+01:00' },
    ],
    { fluids },
  )
  expect(events.filter(({ kind }) => kind === 'charge')).toMatchObject([
    { volume: 180, strength: 7, fluid: 'f2', heldBack: null },
    { volume: 180, strength: null, fluid: 'f2', heldBack: 20 },
  ])
  const scales = events.flatMap((event) => (event.kind === 'reading' ? [event.scales] : []))
  expect(scales.map((scale) => scale.get('f2'))).toEqual([
    { factor: 2 },
    { factor: 2.2 },
    { factor: 2.2 },
    { factor: 2.1 },
  ])
  expect(scales[1]).toBe(scales[2])
  expect(events.at(-1)).toMatchObject({ kind: 'addition', fluid: 'f2' })
})

test('a level counts as litres through the dip table, one outside it as nothing', async () => {
  const dipTable = [
    [0, 0],
    [100, 50],
    [300, 250],
  ]
  const sumps = [{ id: 's1', name: 'Mill 1', fluid: 'f1', dipTable }]
  const events = await poured(
    [
      { kind: 'reading', level: 200 },
      { kind: 'reading', level: 301, brix: 5 },
    ],
    { sumps },
  )
  expect(events).toMatchObject([
    { seen: 150, brix: null },
    { seen: null, brix: 5 },
  ])
})

test('classes of values stay classes; of a volume and of a conductivity the middle is taken', async () => {
  const [event] = await poured([
    {
      kind: 'reading',
      hardness: { low: 120, high: 250 },
      chloride: { below: 50 },
      conductivity: { low: 2, high: 3 },
      volume: { low: 100, high: 140 },
      pumps: 'running',
    },
  ])
  expect(event).toMatchObject({
    hardness: { low: 120, high: 250 },
    chloride: { below: 50 },
    conductivity: 2.5,
    seen: 120,
    pumps: 'running',
  })
})

test('a sample whose result is to come is no reading, its result is one at the time of the sample', async () => {
  const events = await poured([
    { kind: 'reading', pending: true },
    { kind: 'reading', hardness: 300, answers: testId(1), readAt: '2026-03-09T09:00:00+01:00' },
  ])
  expect(events).toMatchObject([{ id: testId(2), at: dayNumber('2026-03-03') + 9.5 / 24, hardness: 300 }])
})

test('hours on the machine’s counter are their own event', async () => {
  expect(await poured([{ kind: 'reading', machineHours: 812 }])).toMatchObject([{ kind: 'hours', hours: 812 }])
})

test('a transfer is told once, with the sump it goes to; into a container or an unknown sump it goes away', async () => {
  const sumps = ['s1', 's2'].map((id) => ({ id, name: id, fluid: 'f1' }))
  const transfer = { kind: 'transfer', volume: 30 }
  const events = await eventsOf(
    [
      { ...transfer, to: 's2' },
      { ...transfer, to: { sump: 's2' } },
      { ...transfer, to: { container: 'b' } },
      { ...transfer, to: 's9' },
      { ...transfer, to: 's1' },
    ],
    { sumps },
  )
  expect(events.slice(0, 3)).toMatchObject([{ kind: 'setup', sump: 's1' }, { kind: 'setup', sump: 's2' }, { to: 's2' }])
  expect(without('setup')(events)).toMatchObject([{ to: 's2' }, { to: 's2' }, { to: null }, { to: null }, { to: null }])
})

test('what was withdrawn counts nowhere, unless its withdrawal was', async () => {
  const reading = { kind: 'reading', brix: 5 }
  const withdraw = (n: number) => ({ kind: 'void', entry: testId(n), at: '2026-04-01T09:00:00Z' })
  expect(await poured([reading, withdraw(1)])).toEqual([])
  expect(await poured([reading, withdraw(1), withdraw(2)])).toHaveLength(1)
})

test('an instrument’s doubt is answered at every sump it concerns', async () => {
  const sumps = ['s1', 's2'].map((id) => ({ id, name: id, fluid: 'f1' }))
  const events = await poured(
    [
      { kind: 'reading', brix: 5 },
      { kind: 'reading', brix: 6, sump: 's2' },
      {
        kind: 'verdict',
        about: { kind: 'instrument' },
        entries: [testId(1), testId(2)],
        answer: 'instrument',
        at: '2026-03-03T12:00:00Z',
      },
    ],
    { sumps },
  )
  expect(events.slice(2)).toMatchObject([
    { kind: 'verdict', sump: 's1', answer: 'instrument', entries: [testId(1), testId(2)] },
    { kind: 'verdict', sump: 's2', answer: 'instrument' },
  ])
})

test('a standstill lasts from one time to another; without an end until it was written', async () => {
  const monday = '2026-03-02T06:00:00+01:00'
  const events = await poured([
    { kind: 'idle', from: monday, to: '2026-03-09T06:00:00+01:00' },
    { kind: 'idle', from: monday },
    { kind: 'idle' },
  ])
  const from = dayNumber('2026-03-02') + 0.25
  expect(events).toMatchObject([
    { from, until: dayNumber('2026-03-09') + 0.25 },
    { from, until: dayNumber('2026-03-03') + 9.5 / 24 },
  ])
})

test('entries of a sump the book does not know are passed over', async () => {
  expect(await eventsOf([{ kind: 'reading', brix: 5, sump: 's9' }])).toEqual([])
})

test('what cannot be is taken as unknown, and nothing is thrown', async () => {
  const dipTable = [
    [0, 50],
    [100, 50],
  ]
  const sumps = [{ id: 's1', name: 'Mill 1', fluid: 'f1', dipTable }]
  const chart = [
    [0, 0],
    [5, 8],
    [6, 8],
  ]
  const fluids = [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, brixChart: chart }]
  const events = await poured(
    [
      { kind: 'reading', level: 50, brix: 5 },
      { kind: 'reading', brix: 'five', volume: -3 },
      { kind: 'addition', volume: Number.NaN, strength: 400 },
      { kind: 'drawoff', volume: '12' },
      { kind: 'idle', from: 'yesterday' },
      { kind: 'unheard-of' },
      { kind: 'charge', volume: null },
    ],
    { sumps, fluids },
  )
  expect(events.map((event) => ({ ...event, scales: undefined }))).toMatchObject([
    { kind: 'charge', volume: null },
    { kind: 'reading', seen: null, brix: 5 },
    { kind: 'drawoff', volume: null },
    { kind: 'addition', amount: null, strength: null },
  ])
  const reading = events.find(({ kind }) => kind === 'reading')
  expect(reading?.kind === 'reading' && reading.scales.get('f1')).toEqual({ factor: 1.6 })
})

test('clocks years off are days like any other, in their order', async () => {
  const years = ['1970-01-01', '2026-03-03', '2031-07-01'].map((day) => `${day}T09:00:00Z`)
  const days = await daysOf(years.toReversed().map((at) => ({ kind: 'reading', brix: 5, at })))
  expect(days.map(({ day }) => day)).toEqual([0, dayNumber('2026-03-03'), dayNumber('2031-07-01')])
})
