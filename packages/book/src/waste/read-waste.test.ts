import { expect, onTestFinished, test } from 'vitest'
import { type Book, openBook } from '../book.ts'
import { sourceOf } from '../import/sheet/sheet-source.ts'
import { inMemory, openSqliteStore } from '../store/sqlite/open.ts'
import { smallShop, testId } from '../testing.ts'
import { dueWaste } from './due-waste.ts'
import { readWaste, type WasteQuestion } from './read-waste.ts'

/** Noon of a day of 2026 in the small shop's zone. */
const noon = (day: string) => `2026-${day}T12:00:00+01:00`
const asked = new Date(noon('03-03'))
let n = 0

const tank = {
  id: 'emulsion',
  name: 'Emulsion tank',
  stream: 'Used emulsion',
  kind: 'emulsion',
  code: '120109*',
  capacity: 1000,
  density: 1,
  term: { count: 90, unit: 'days', source: '40 CFR 262.17(a)', from: 'first' },
}
const drum = { id: 'oil', name: 'Oil drum', kind: 'oil', capacity: 200, density: 0.9 }

async function shopWith(entries: Record<string, unknown>[], more: Record<string, unknown> = {}): Promise<Book> {
  const store = await openSqliteStore(inMemory)
  onTestFinished(() => store.close())
  const book = openBook(store, () => asked)
  const file = {
    ...smallShop({ wasteContainers: [tank, drum], ...more }),
    entries: entries.map((one) => ({ id: testId(++n), ...one })),
  }
  await book.importFile(sourceOf('book.json', Buffer.from(JSON.stringify(file))))
  return book
}

const about = { kind: 'waste', id: 'emulsion' }
const stored = (day: string, litres: number, more = {}) => ({ kind: 'stored', about, at: noon(day), litres, ...more })
const pickup = (day: string, litres: number | undefined, more = {}) => ({
  kind: 'pickup',
  about,
  at: noon(day),
  ...(litres === undefined ? {} : { litres }),
  ...more,
})
const wasteIn = (book: Book, question: Partial<WasteQuestion> = {}) =>
  book.ask((parts) => readWaste(parts, { at: asked, ...question }))
const tankIn = async (book: Book, question: Partial<WasteQuestion> = {}) =>
  (await wasteIn(book, question)).containers[0]!
const dueIn = (book: Book) => book.ask((parts) => dueWaste(parts, { at: asked, until: asked, reader: {} }))

test('a container is what was put in less what was fetched, with its clock from the first drop', async () => {
  const book = await shopWith([
    stored('01-05', 300),
    pickup('01-20', 300, { document: 'N-1' }),
    stored('02-01', 100),
    stored('02-10', 50, { from: 's1' }),
  ])
  expect(await tankIn(book)).toMatchObject({
    isSetUp: true,
    litres: 150,
    full: 15,
    code: '12 01 09*',
    // 1 February and 90 days: 27 left of February, 31, 30, then 2 May
    clock: { startedOn: '2026-02-01', endsOn: '2026-05-02', daysLeft: 60 },
    doubts: [],
  })
  expect((await tankIn(book)).term).toBe(
    'It may wait 90 days from the first drop on (40 CFR 262.17(a)). It runs since 1 February.',
  )
})

test('litres that only kilograms tell come from the density; an amount nobody told takes all', async () => {
  const book = await shopWith([
    stored('01-05', 90, { about: { kind: 'waste', id: 'oil' }, litres: undefined, kilograms: 90 }),
    stored('01-06', 300),
    pickup('02-01', undefined, { document: 'N-2' }),
  ])
  const { containers } = await wasteIn(book)
  expect(containers.map(({ litres }) => litres)).toEqual([0, 100])
})

test('a pickup beyond what was there is taken and told', async () => {
  const book = await shopWith([stored('01-05', 300), pickup('01-20', 420, { document: 'N-1' })])
  const { litres, doubts, pickups } = await tankIn(book)
  expect(litres).toBe(0)
  expect(doubts).toEqual([
    'The pickup on 20 January took 420 L, and the book knew of 300 L: 120 L were put in unwritten, or the paper says another amount.',
  ])
  expect(pickups).toMatchObject([{ litres: 420, document: 'N-1', doubt: doubts[0] }])
})

test('a document that comes later is written beside its pickup, and nothing is edited', async () => {
  const fetched = { id: testId(++n), ...pickup('02-20', 100) }
  const book = await shopWith([stored('02-01', 100), fetched])
  expect((await dueIn(book)).map(({ key }) => key)).toContain(`waste:document:${fetched.id}`)
  await book.put({ id: testId(++n), kind: 'check', about, at: noon('03-02'), document: 'N-77', answers: fetched.id })
  expect((await tankIn(book)).pickups).toMatchObject([{ document: 'N-77' }])
  expect(await dueIn(book)).toEqual([])
})

test('a term that ends soon is due under no cap; one that ended says since when', async () => {
  const soon = await shopWith([stored('01-01', 100)], {
    wasteContainers: [{ ...tank, term: { ...tank.term, count: 65 } }],
  })
  // 1 January and 65 days: 30, 28, then 7 March
  expect(await dueIn(soon)).toMatchObject([
    {
      headline: 'Have Emulsion tank fetched by 7 March',
      exempt: true,
      dueOn: '2026-02-21',
      kind: 'waste',
      page: '/stock/waste',
    },
  ])
  const over = await shopWith([stored('01-01', 100)], {
    wasteContainers: [{ ...tank, term: { ...tank.term, count: 30 } }],
  })
  expect((await dueIn(over))[0]).toMatchObject({
    headline: 'Have Emulsion tank fetched: its time ended on 31 January',
    consequence: 2,
  })
})

test('a container that is nearly full calls for its carrier', async () => {
  const book = await shopWith([stored('02-01', 950)], { wasteContainers: [{ ...tank, term: undefined }] })
  expect(await dueIn(book)).toMatchObject([{ headline: 'Call the carrier for Emulsion tank', exempt: false }])
  const over = await shopWith([stored('02-01', 1200)], { wasteContainers: [{ ...tank, term: undefined }] })
  expect((await dueIn(over))[0]!.why).toContain('200 L more than it holds')
})

test('what the sumps gave is held against what was stored, oil apart', async () => {
  const book = await shopWith([
    { kind: 'drawoff', sump: 's1', at: noon('02-01'), volume: 100 },
    { kind: 'cleanout', sump: 's1', at: noon('02-10'), wasteVolume: 250 },
    { kind: 'drawoff', sump: 's1', at: noon('02-10'), volume: 200 },
    { kind: 'skim', sump: 's1', at: noon('02-12'), litres: 30 },
    { kind: 'drawoff', sump: 's1', at: noon('02-14') },
    stored('02-01', 100),
    stored('02-10', 250),
  ])
  const { balance, unmeasured } = await wasteIn(book)
  // The draw-off on the day of the cleanout is part of its waste: 100 + 250
  expect(balance).toMatchObject([
    { kind: 'emulsion', given: 350, stored: 350, outcome: 'agrees' },
    { kind: 'oil', given: 30, stored: 0, outcome: 'lost', litres: 30 },
  ])
  expect(balance[1]!.says).toBe(
    'Oil: 30 L skimmed, 0 L written as stored. 30 L are not explained: stored unwritten, or gone another way.',
  )
  expect(unmeasured).toBe('1 draw-off, skim or cleanout told no amount, and count as nothing.')
})

test('sums and lists are those of the days asked for; the container is as of now', async () => {
  const book = await shopWith([
    { kind: 'drawoff', sump: 's1', at: noon('01-10'), volume: 100 },
    stored('01-10', 100),
    stored('02-10', 60),
  ])
  const { balance, containers } = await wasteIn(book, { from: '2026-01-10', to: '2026-01-10' })
  expect(balance).toMatchObject([{ given: 100, stored: 100 }])
  expect(containers[0]).toMatchObject({ litres: 160, stored: [{ litres: 100 }] })
})

test('a container that nobody set up is there under its stream, with what is unknown left open', async () => {
  const book = await shopWith([stored('02-01', 80, { about: { kind: 'waste', id: 'x9' }, stream: 'Used emulsion' })], {
    wasteContainers: [],
  })
  expect((await wasteIn(book)).containers).toMatchObject([
    {
      id: 'x9',
      name: 'Used emulsion',
      isSetUp: false,
      litres: 80,
      capacity: null,
      full: null,
      code: null,
      clock: null,
    },
  ])
})

test('the order in which devices send changes nothing, and what is withdrawn does not count', async () => {
  const entries = [stored('01-05', 300), pickup('01-20', 200, { document: 'N' }), stored('02-01', 100)].map(
    (entry) => ({
      id: testId(++n),
      ...entry,
    }),
  )
  const there = await wasteIn(await shopWith(entries))
  const back = await shopWith([...entries].reverse())
  expect(await wasteIn(back)).toEqual(there)
  await back.put({ id: testId(++n), kind: 'void', entry: entries[2]!.id, at: noon('02-02') })
  expect((await tankIn(back)).litres).toBe(100)
})

test('a code of synthetic oils on emulsion is questioned, and a shop that counts in US gallons hears of halogens', async () => {
  const odd = await shopWith([], { wasteContainers: [{ ...tank, code: '12 01 10*' }] })
  expect((await tankIn(odd)).cautions[0]).toMatch(/^12 01 10\* is for synthetic oils/)
  const shop = { ...smallShop().shop, units: 'us' }
  const us = await shopWith([], { shop })
  expect((await tankIn(us)).cautions[0]).toMatch(/1,000 ppm of total halogens/)
})
