import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId } from '../testing.ts'
import { readCleanoutPlan } from './read-cleanout-plan.ts'
import { readJob, readJobs } from './read-jobs.ts'
import { readSideBySide } from './read-side-by-side.ts'

const monday = new Date('2026-03-02T07:00:00Z')
const values = {
  volume: 200,
  heldBack: 10,
  cleanerPercent: 2,
  hours: 4,
  rinsePercent: 2,
  rinseFraction: 0.4,
  rinses: 1,
  target: 8,
  water: 'tap',
}
const opening = {
  id: testId(1),
  at: '2026-03-02T06:00:00Z',
  kind: 'signoff',
  sump: 's1',
  job: testId(1),
  step: 'opened',
  sheet: 'cleanout',
  by: 'anna',
  values,
}
const signed = (n: number, step: string, at: string, more: Record<string, unknown> = {}) => ({
  id: testId(n),
  at: `2026-03-${at}Z`,
  kind: 'signoff',
  sump: 's1',
  job: testId(1),
  step,
  by: 'anna',
  ...more,
})
const good = { freshPh: 9, rinsePh: 9.1, look: 'clear', smell: 'none' }

async function bookOf(entries: unknown[], now = monday, more: Record<string, unknown> = {}) {
  const store = await emptyStore()
  await importBookFile(store, JSON.stringify(smallShop({ entries, ...more })), now)
  return openBook(store, () => now)
}
const jobOf = async (entries: unknown[], now = monday, more: Record<string, unknown> = {}) =>
  (await bookOf(entries, now, more)).ask((parts, at) => readJob(parts, testId(1), { at }))

/** Every step before the fresh charge, an hour apart. */
const untilRinse = ['ready', 'skim', 'lock-out', 'drain', 'sludge', 'cleaner', 'cleaner-drain', 'rinse-1'].map(
  (step, i) => signed(10 + i, step, `02T${String(7 + i).padStart(2, '0')}:00:00`),
)
const evening = new Date('2026-03-02T20:00:00Z')

test('a job that was opened is planned, with the sheet that its values make', async () => {
  const job = await jobOf([opening])
  expect(job).toMatchObject({
    state: 'planned',
    title: 'Cleanout of Mill 1',
    nextStep: 'ready',
    done: 0,
    openedBy: 'anna',
  })
  expect(job.steps.find(({ id }) => id === 'charge')!.text).toContain('of tap water')
  expect(job.totals).toMatchObject({ waste: 460, drainBy: 'pump' })
})

test('signing step by step carries it on; a void takes a signature back', async () => {
  const done = [signed(2, 'ready', '02T06:30:00'), signed(3, 'skim', '02T06:40:00')]
  expect(await jobOf([opening, ...done])).toMatchObject({ state: 'open', done: 2, nextStep: 'lock-out' })
  const back = { id: testId(4), at: '2026-03-02T06:50:00Z', kind: 'void', entry: testId(3) }
  expect(await jobOf([opening, ...done, back])).toMatchObject({ state: 'open', done: 1, nextStep: 'skim' })
})

test('of two who sign a step the first in time counts, and the other is shown', async () => {
  const late = signed(2, 'ready', '02T06:45:00', { by: 'ben' })
  const first = signed(3, 'ready', '02T06:30:00')
  const { steps } = await jobOf([opening, late, first])
  expect(steps[0]).toMatchObject({ signed: { by: 'anna' }, again: [{ by: 'ben', entry: testId(2) }] })
})

test('a signature out of turn counts, one of a step that the sheet lacks is a stray', async () => {
  const job = await jobOf([opening, signed(2, 'skim', '02T06:30:00'), signed(3, 'polish', '02T06:31:00')])
  expect(job).toMatchObject({ done: 1, nextStep: 'ready', strays: [{ step: 'polish' }] })
})

test('a rinse that still shows cleaner asks for another, and the charge follows from it', async () => {
  const bad = signed(30, 'rinse-check', '02T15:00:00', { values: { ...good, rinsePh: 10.2 } })
  const job = await jobOf([opening, ...untilRinse, bad], evening)
  expect(job.steps.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['rinse-1', 'rinse-check', 'rinse-2', 'rinse-check-2', 'charge']),
  )
  expect(job).toMatchObject({ nextStep: 'rinse-2', totals: { waste: 540 } })
  expect(job.steps.find(({ id }) => id === 'rinse-check')!.verdict).toMatchObject({ accepted: false })
  const again = [signed(31, 'rinse-2', '02T16:00:00'), signed(32, 'rinse-check-2', '02T16:30:00', { values: good })]
  expect(await jobOf([opening, ...untilRinse, bad, ...again], evening)).toMatchObject({ nextStep: 'charge' })
})

test('a look without a pH leaves the step open until somebody signs it with one', async () => {
  const blind = signed(30, 'rinse-check', '02T15:00:00', { values: { look: 'clear', smell: 'none' } })
  expect(await jobOf([opening, ...untilRinse, blind], evening)).toMatchObject({ nextStep: 'rinse-check' })
  const seen = signed(31, 'rinse-check', '02T15:30:00', { values: good })
  const job = await jobOf([opening, ...untilRinse, blind, seen], evening)
  expect(job).toMatchObject({ nextStep: 'charge' })
  expect(job.steps.find(({ id }) => id === 'rinse-check')!.signed!.entry).toBe(testId(31))
})

const charged = [
  opening,
  ...untilRinse,
  signed(30, 'rinse-check', '02T15:00:00', { values: good }),
  signed(31, 'charge', '02T16:00:00'),
  signed(32, 'first-readings', '02T17:00:00'),
]

test('after the fresh charge it waits for its slide, which is due on the working day a week later', async () => {
  const book = await bookOf(charged, evening)
  const { open } = await book.ask((parts, at) => readJobs(parts, { at }))
  expect(open).toMatchObject([{ state: 'waiting', slideOn: '2026-03-09' }])
  const dueOn = async (now: string) => (await book.today({ at: new Date(now) })).due.map(({ key }) => key)
  expect(await dueOn('2026-03-08T10:00:00Z')).not.toContain(`slide:${testId(1)}`)
  expect(await dueOn('2026-03-09T10:00:00Z')).toContain(`slide:${testId(1)}`)
})

const limited = { sumps: [{ ...smallShop().sumps[0], limits: { bacteria: { high: 10_000 } } }] }
const slide = (bacteria: unknown) => signed(33, 'later-slide', '11T10:00:00', { values: { bacteria } })
const later = new Date('2026-03-12T10:00:00Z')

test.each([
  ['under the limit', { below: 1000 }, 'done', true],
  ['above it', { atLeast: 1e6 }, 'done', false],
  ['of a class that holds the limit', { low: 1000, high: 100_000 }, 'waiting', null],
  ['without a figure', undefined, 'waiting', null],
])('a later slide %s', async (_, bacteria, state, accepted) => {
  const job = await jobOf([...charged, slide(bacteria)], later, limited)
  expect(job).toMatchObject({ state })
  expect(job.steps.at(-1)!.verdict!.accepted).toBe(accepted)
})

test('the fresh charge is written as the facts it makes', async () => {
  const { steps } = await jobOf([opening])
  expect(steps.find(({ id }) => id === 'charge')!.writes).toEqual([
    { kind: 'cleanout', cleanerPercent: 2, hours: 4, rinses: 1, wasteVolume: 460 },
    { kind: 'charge', volume: 190, strength: 8.33, fluid: 'f1', water: 'tap', heldBack: 10 },
  ])
})

test('a job that is given up is out of the way', async () => {
  const job = await jobOf([opening, signed(2, 'given-up', '02T06:30:00')])
  expect(job).toMatchObject({ state: 'given-up', nextStep: null })
})

test('what a job was opened with and makes no sheet leaves it without steps', async () => {
  expect(await jobOf([{ ...opening, values: { volume: 'much' } }])).toMatchObject({ steps: [], totals: null })
})

test('a signature whose job has not arrived waits for it', async () => {
  const book = await bookOf([signed(2, 'skim', '02T06:30:00')])
  expect(await book.ask((parts, at) => readJobs(parts, { at }))).toMatchObject({ open: [], planned: [], done: [] })
  await book.put(opening)
  expect(await book.ask((parts, at) => readJobs(parts, { at }))).toMatchObject({ open: [{ done: 1 }] })
})

test('a job that nobody opened is not found', async () => {
  const book = await bookOf([])
  await expect(book.ask((parts, at) => readJob(parts, testId(9), { at }))).rejects.toThrow('no job')
})

test('a plan takes mark, target and fluid from the book and says what it took as the trade does', async () => {
  const book = await bookOf([])
  const plan = await book.ask((parts, at) => readCleanoutPlan(parts, 's1', { at }))
  expect(plan).toMatchObject({
    title: 'Cleanout of Mill 1',
    waste: 180 + 180 + 80,
    cost: null,
    opening: { step: 'opened', sheet: 'cleanout', values: { volume: 200, heldBack: 20, target: 8, water: 'tap' } },
  })
  expect(plan.notes.join(' ')).toContain('as a tenth, common practice')
})

test('prices of the book make its cost, to the cent', async () => {
  const costs = { wastePerLitre: 0.5 }
  const book = await bookOf([], monday, { shop: { ...smallShop().shop, costs } })
  const plan = await book.ask((parts, at) => readCleanoutPlan(parts, 's1', { at, heldBack: 10 }))
  expect(plan.cost).toBe(230)
})

test('another fluid makes it a change-over, with what the two ask for', async () => {
  const [first] = smallShop().fluids
  const fluids = [
    { ...first, contains: ['nitrite'] },
    { ...first, id: 'f2', name: 'Semi 2', contains: ['amines'] },
  ]
  const book = await bookOf([], monday, { fluids })
  const plan = await book.ask((parts, at) => readCleanoutPlan(parts, 's1', { at, fluid: 'f2' }))
  expect(plan).toMatchObject({ sheet: 'change-over', opening: { values: { fluid: 'f2', fromFluid: 'f1' } } })
  expect(plan.change[0]).toMatch(/must not meet/)
  expect(plan.steps.find(({ id }) => id === 'label')!.writes).toEqual([
    { kind: 'setup', about: { kind: 'sump', id: 's1' }, changes: { fluid: 'f2' }, was: { fluid: 'f1' } },
  ])
})

test('what the book does not know is asked for by name', async () => {
  const book = await bookOf([], monday, { sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1' }] })
  const plan = (more: object) => book.ask((parts, at) => readCleanoutPlan(parts, 's1', { at, ...more }))
  await expect(plan({})).rejects.toMatchObject({ faults: [{ pointer: '/volume' }] })
  await expect(plan({ volume: 100, heldBack: 100 })).rejects.toMatchObject({ faults: [{ pointer: '/heldBack' }] })
  await expect(plan({ volume: 100, fluid: 'no' })).rejects.toMatchObject({ faults: [{ pointer: '/fluid' }] })
  await expect(plan({ volume: 100, target: 60 })).rejects.toMatchObject({ faults: [{ pointer: '/target' }] })
})

test('machines side by side begin and end at instants', async () => {
  const [first] = smallShop().sumps
  const book = await bookOf([], monday, { sumps: [first, { ...first, id: 's2', name: 'Mill 2' }] })
  const plan = await book.ask((parts, at) =>
    readSideBySide(parts, { at, sumps: ['s1', 's2'], people: 1, pumps: 1, start: monday }),
  )
  expect(plan.machines.map(({ name }) => name)).toEqual(['Mill 1', 'Mill 2'])
  expect(plan.machines.map(({ start }) => start)).toContain(monday.toISOString())
  expect(plan.exact).toBe(true)
})
