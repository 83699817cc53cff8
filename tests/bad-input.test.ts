/** What goes wrong in the trade's everyday, asked through the API as an app would: each has an outcome of its own, in words, and nothing is guessed. */
import { isBeyond } from '@sumpbook/fluid'
import { expect, onTestFinished, test } from 'vitest'
import { inMemory, openBook, openSqliteStore, sourceOf } from '../packages/book/src/index.ts'
import { buildApp } from '../packages/server/src/app.ts'

const now = new Date('2026-03-03T10:00:00.000Z')
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const biocide = {
  ...{ id: 'b3', name: 'Biocide 3', kind: 'biocide', label: 'label of 2025, table 2' },
  dose: { low: 1, high: 2, unit: 'mL/L' },
  minimumDays: 7,
}

/** One mill of 200 L in a shop, with its charge and a reading. */
async function shopApp({ additives = [biocide] as object[], guidance = {} as object } = {}) {
  const book = openBook(await openSqliteStore(inMemory), () => now)
  const app = await buildApp({ book, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  const document = {
    format: 'sumpbook-book/1',
    shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric', additives, guidance },
    fluids: [
      {
        ...{ id: 'f1', name: 'Semi 1', class: 'semi-synthetic', brixFactor: 1.6, contains: ['nitrite'] },
        limits: { concentration: { low: 6, target: 8, high: 10 } },
      },
      {
        id: 'f2',
        name: 'Semi 2',
        class: 'semi-synthetic',
        brixFactor: 1.4,
        contains: ['amines'],
        limits: { concentration: { low: 5, target: 7, high: 9 } },
      },
    ],
    sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
    wasteContainers: [
      {
        id: 'tank',
        name: 'Emulsion tank',
        stream: 'Used emulsion',
        kind: 'emulsion',
        code: '12 01 09*',
        capacity: 1000,
      },
    ],
    entries: [
      { id: id(1), at: '2026-02-20T08:00:00Z', kind: 'charge', sump: 's1', volume: 200, strength: 8, fluid: 'f1' },
      { id: id(2), at: '2026-03-03T08:30:00Z', kind: 'reading', sump: 's1', brix: 5, volume: 195 },
    ],
  }
  await book.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(document))))
  const ask = async (path: string) => (await app.inject(`/api/v1${path}`)).json()
  const put = async (n: number, entry: Record<string, unknown>) =>
    (await app.inject({ method: 'PUT', url: `/api/v1/entries/${id(n)}`, payload: { id: id(n), ...entry } })).statusCode
  return { app, ask, put }
}

type DueSaid = { key: string; headline: string; why: string; cautions: string[]; finish: unknown }
const dueOf = async (ask: (path: string) => Promise<{ due: DueSaid[] }>, start: string) =>
  (await ask('/today')).due.find(({ key }) => key.startsWith(start))

test('label limits missing: no dose is given, and it is said what is missing', async () => {
  const { dose: _, ...bare } = biocide
  const { ask } = await shopApp({ additives: [bare] })
  const { doses } = await ask('/sumps/s1/dose')
  expect(doses[0].answer).toEqual({ outcome: 'label-missing', missing: 'dose' })
  expect(doses[0].words.headline).toBe('No dose: the label is not in the book')
  expect(doses[0].words.why).toContain('Nothing is guessed.')
})

test('a dose over the label: it is a fact and kept, named on the list until somebody answers for it, and no other dose is given', async () => {
  const { ask, put } = await shopApp()
  // The label's most for 200 L is 400 mL.
  const dose = { at: '2026-03-03T09:00:00Z', kind: 'addition', sump: 's1', additive: { id: 'b3', litres: 0.8 } }
  expect(await put(10, dose)).toBe(201)
  const due = (await dueOf(ask, 'dose:'))!
  expect(due.headline).toBe('A dose of Biocide 3 in Mill 1 goes against its label')
  expect(due.why).toContain('ask the supplier')
  const { doses } = await ask('/sumps/s1/dose')
  expect(doses[0].answer.outcome).not.toBe('dose')
  expect(doses[0].contradictions).toHaveLength(1)
  expect(await put(11, { at: '2026-03-03T09:10:00Z', sump: 's1', ...(due.finish as object) })).toBe(201)
  expect(await dueOf(ask, 'dose:')).toBeUndefined()
})

test('a slide read past its window: the result is kept and says what it is worth, and a fresh slide is due', async () => {
  const { ask, put } = await shopApp({ guidance: { pack: 'united-kingdom', edition: 'current' } })
  const slide = { kind: 'reading', sump: 's1', at: '2026-02-25T08:00:00Z', method: 'dip slide' }
  expect(await put(20, { ...slide, pending: true })).toBe(201)
  const result = { ...slide, answers: id(20), readAt: '2026-03-02T08:00:00Z', bacteria: 1e6 }
  expect(await put(21, result)).toBe(201)
  const { answered } = await ask('/samples')
  expect(answered[0].results[0].says).toContain('Read after its window')
  const { tests } = await ask('/sumps/s1/calendar')
  expect(tests.find(({ test: name }: { test: string }) => name === 'bacteria')).toMatchObject({
    isDue: true,
    why: expect.stringContaining('The last slide was read after its window: a fresh one is due.'),
  })
})

test('a pickup larger than the container: the paper is kept, the container is empty, and the difference is named', async () => {
  const { ask, put } = await shopApp()
  const about = { kind: 'waste', id: 'tank' }
  // The form asks once before it is written.
  expect(isBeyond(1500, { had: 300, capacity: 1000 })).toBe(true)
  expect(await put(30, { at: '2026-02-10T08:00:00Z', kind: 'stored', about, litres: 300 })).toBe(201)
  const pickup = { at: '2026-03-01T08:00:00Z', kind: 'pickup', about, litres: 1500, document: 'N-12' }
  expect(await put(31, pickup)).toBe(201)
  const [tank] = (await ask('/waste')).containers
  expect(tank).toMatchObject({ litres: 0, pickups: [{ litres: 1500, document: 'N-12' }] })
  expect(tank.doubts.join(' ')).toContain('took 1500 L, and the book knew of 300 L: 1200 L')
})

test('two fluids that must not meet: the sheet of the change says so first, and calls for the suppliers', async () => {
  const { ask } = await shopApp()
  const plan = await ask('/sumps/s1/cleanout-plan?fluid=f2')
  expect(plan.sheet).toBe('change-over')
  expect(plan.change[0]).toMatch(/must not meet/)
  expect(plan.change.join(' ')).toMatch(/supplier/)
  expect(plan.steps.flatMap(({ cautions }: { cautions: string[] }) => cautions).join(' ')).toMatch(/nitrite/i)
})

test('an additive with amines for a fluid with nitrite: no dose, whatever its label allows', async () => {
  const { ask } = await shopApp({ additives: [{ ...biocide, contains: ['amines'] }] })
  const { doses } = await ask('/sumps/s1/dose')
  expect(doses[0].answer.outcome).toBe('nitrite-with-amines')
  expect(`${doses[0].words.headline} ${doses[0].words.why}`).toMatch(/nitrite/i)
})
