import { expect, test } from 'vitest'
import type { UpkeepLine } from './asks.ts'
import { doneEntry, shopTask, tasksEntry, withTasks } from './task-list.ts'

const stamp = { at: 'at', recordedAt: 'at', newId: () => 'id' }
const line: UpkeepLine = {
  id: 'basket',
  task: 'Chip basket emptied',
  sump: 's1',
  everyDays: 7,
  name: 'Mill 1',
  lastOn: null,
  lastBy: null,
  dueOn: '2026-03-03',
  isDue: true,
  punctuality: { times: 0, late: 0, medianDaysLate: null, slipping: null },
  sentence: '',
}

test('a task goes back as the shop keeps it, fields it does not know included', () => {
  expect(shopTask({ ...line, colour: 'blue' } as UpkeepLine)).toEqual({
    id: 'basket',
    task: 'Chip basket emptied',
    sump: 's1',
    everyDays: 7,
    colour: 'blue',
  })
})

test('what is taken on counts from its day, what is there stays as it is', () => {
  const there = shopTask(line)
  const more = { ...there, id: 'filter', task: 'Filter changed' }
  expect(withTasks([there], [there, more], '2026-03-03')).toEqual([there, { ...more, from: '2026-03-03' }])
})

test('the list is a set-up of the shop with what it was before', () => {
  const there = shopTask(line)
  expect(tasksEntry([], [there], stamp)).toMatchObject({
    kind: 'setup',
    about: { kind: 'shop', id: 'shop' },
    changes: { upkeep: [] },
    was: { upkeep: [there] },
  })
})

test('one tap writes an upkeep or a skimming; a check is written with its figures', () => {
  expect(doneEntry(line, stamp)).toMatchObject({
    kind: 'upkeep',
    sump: 's1',
    task: 'Chip basket emptied',
    result: 'done',
  })
  expect(doneEntry({ ...line, counts: 'skim' }, stamp)).toMatchObject({ kind: 'skim', sump: 's1' })
  expect(doneEntry({ ...line, counts: 'check' }, stamp)).toBeNull()
})
