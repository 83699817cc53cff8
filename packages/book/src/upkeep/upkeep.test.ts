import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId } from '../testing.ts'
import { readUpkeep } from './read-upkeep.ts'

// A Monday.
const now = new Date('2026-03-16T10:00:00Z')
const basket = { id: 'basket', task: 'Chip basket emptied', sump: 's1', everyDays: 7 }
const done = (n: number, day: string, more: Record<string, unknown> = {}) => ({
  id: testId(n),
  at: `2026-${day}T09:00:00Z`,
  kind: 'upkeep',
  sump: 's1',
  task: 'Chip basket emptied',
  result: 'done',
  by: 'anna',
  ...more,
})

async function bookOf(upkeep: unknown[], entries: unknown[] = [], more: Record<string, unknown> = {}) {
  const store = await emptyStore()
  const shop = { ...smallShop().shop, upkeep }
  await importBookFile(store, JSON.stringify(smallShop({ shop, entries, ...more })), now)
  return openBook(store, () => now)
}
const upkeepOf = async (...args: Parameters<typeof bookOf>) =>
  (await bookOf(...args)).ask((parts, at) => readUpkeep(parts, { at }))
const only = async (task: object, entries: unknown[] = [], more: Record<string, unknown> = {}) =>
  (await upkeepOf([{ ...basket, ...task }], entries, more)).tasks[0]!

test('a task is due its days after it was done, in whatever letters its words were written', async () => {
  const line = await only({}, [done(1, '03-11', { task: '  chip  basket EMPTIED' })])
  expect(line).toMatchObject({
    lastOn: '2026-03-11',
    lastBy: 'anna',
    dueOn: '2026-03-18',
    isDue: false,
    name: 'Mill 1',
  })
  expect(line.sentence).toBe('Every 7 days, last done 5 days ago; due in 2 days.')
})

test('where its day has none of the shop’s work it is due before', async () => {
  expect(await only({ everyDays: 10 }, [done(1, '03-11')])).toMatchObject({ dueOn: '2026-03-20' })
})

test('what was never done is due from the day the shop took it on', async () => {
  expect(await only({ from: '2026-03-18' })).toMatchObject({ lastOn: null, dueOn: '2026-03-18', isDue: false })
  expect(await only({})).toMatchObject({ dueOn: '2026-03-16', isDue: true })
})

test('another task, another sump and what was withdrawn do not count', async () => {
  const back = { id: testId(9), at: '2026-03-15T10:00:00Z', kind: 'void', entry: testId(3) }
  const entries = [
    done(1, '03-11', { task: 'Filter changed' }),
    done(2, '03-12', { sump: 's2' }),
    done(3, '03-13'),
    back,
  ]
  const sumps = [smallShop().sumps[0], { ...smallShop().sumps[0], id: 's2', name: 'Mill 2' }]
  expect(await only({}, entries, { sumps })).toMatchObject({ lastOn: null })
})

test('skimming, checks and analyses count by their kind', async () => {
  const skim = { id: testId(1), at: '2026-03-12T09:00:00Z', kind: 'skim', sump: 's1', litres: 2 }
  expect(await only({ task: 'Skimmed', counts: 'skim' }, [skim])).toMatchObject({ lastOn: '2026-03-12' })
  const analysis = {
    id: testId(2),
    at: '2026-03-12T09:00:00Z',
    kind: 'analysis',
    about: { kind: 'water', id: 'tap' },
    hardness: 200,
  }
  const task = { id: 'w', task: 'Analysed', about: { kind: 'water', id: 'tap' }, everyDays: 182, counts: 'analysis' }
  const { tasks } = await upkeepOf([task], [analysis])
  expect(tasks).toMatchObject([{ lastOn: '2026-03-12', name: 'Tap water' }])
})

test('what comes later each time is said to slip', async () => {
  const days = ['01-05', '01-12', '01-20', '01-29', '02-09', '02-20'].map((day, i) => done(i + 1, day))
  const line = await only({}, days)
  expect(line.punctuality).toMatchObject({ times: 5, slipping: true })
  expect(line.sentence).toContain('It comes later each time.')
})

test('what the records show to come back is proposed in its own rhythm, what is taken on is proposed no more', async () => {
  const entries = ['02-02', '02-16', '03-02'].map((day, i) => done(i + 1, day, { task: 'Magnet drum wiped' }))
  const proposals = async (upkeep: unknown[]) => (await upkeepOf(upkeep, entries)).proposals
  const found = (await proposals([])).find(({ because }) => because === 'done before')
  expect(found).toMatchObject({ task: 'Magnet drum wiped', sump: 's1', everyDays: 14 })
  const { because: _, name: __, ...task } = found!
  expect((await proposals([task])).map(({ task: words }) => words)).not.toContain('Magnet drum wiped')
})

test('every water is proposed for analysis, every sump for skimming', async () => {
  const { proposals } = await upkeepOf([])
  expect(proposals.filter(({ counts }) => counts === 'analysis')).toHaveLength(2)
  expect(proposals.filter(({ counts }) => counts === 'skim')).toHaveLength(1)
})

test('what is due stands on Today, and the entry that finishes it is ready', async () => {
  const book = await bookOf([
    basket,
    { id: 'm', task: 'Zero checked', about: { kind: 'shop' }, everyDays: 7, counts: 'check' },
  ])
  const { due } = await book.today()
  expect(due.find(({ key }) => key === 'upkeep:basket')).toMatchObject({
    headline: 'Mill 1: Chip basket emptied',
    finish: { kind: 'upkeep', task: 'Chip basket emptied', result: 'done' },
    cautions: ['Lock out the machine before a hand goes into it.'],
  })
  expect(due.find(({ key }) => key === 'upkeep:m')).toMatchObject({ kind: 'check', finish: null })
  await book.put({
    id: testId(50),
    at: '2026-03-16T09:59:00Z',
    kind: 'upkeep',
    sump: 's1',
    task: 'Chip basket emptied',
  })
  expect((await book.today()).due.map(({ key }) => key)).not.toContain('upkeep:basket')
})

test('one task at many sumps is one line for the round', async () => {
  const sumps = [1, 2, 3, 4].map((n) => ({ ...smallShop().sumps[0], id: `s${n}`, name: `Mill ${n}` }))
  const tasks = sumps.map(({ id }) => ({ ...basket, id: `b-${id}`, sump: id }))
  const { due } = await (await bookOf(tasks, [], { sumps })).today()
  expect(due.filter(({ key }) => key.startsWith('upkeep:'))).toMatchObject([
    { headline: 'Chip basket emptied at 4 places' },
  ])
})
