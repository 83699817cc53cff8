import type { Entry } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { envelope, type Stamp } from '../entry/stamp.ts'
import type { ProposedTask, UpkeepLine } from './asks.ts'

/** What an answer adds to a task of the shop's list. */
const worked = ['name', 'lastOn', 'lastBy', 'person', 'dueOn', 'isDue', 'punctuality', 'sentence', 'because'] as const

/** A task as the shop keeps it. */
export type ShopTask = Pick<UpkeepLine, 'id' | 'task' | 'everyDays'> & Record<string, unknown>

export function shopTask(line: UpkeepLine | ProposedTask): ShopTask {
  return Object.fromEntries(
    Object.entries(line).filter(([key]) => !(worked as readonly string[]).includes(key)),
  ) as ShopTask
}

/** The shop's list as it is from now on; what it was stays beside it. */
export function tasksEntry(tasks: readonly ShopTask[], was: readonly ShopTask[], stamp: Stamp): Entry {
  return setupEntry({ kind: 'shop', id: 'shop' }, { upkeep: tasks }, { upkeep: was }, stamp)
}

/** Tasks with others taken on from a day; what is there already stays as it is. */
export function withTasks(tasks: readonly ShopTask[], more: readonly ShopTask[], from: string): ShopTask[] {
  const known = new Set(tasks.map(({ id }) => id))
  return [...tasks, ...more.filter(({ id }) => !known.has(id)).map((task) => ({ ...task, from }))]
}

/** That a task was done; null where it is written with its figures, elsewhere. */
export function doneEntry({ task, sump, about, counts = 'upkeep' }: UpkeepLine, stamp: Stamp): Entry | null {
  if (counts !== 'upkeep' && counts !== 'skim') return null
  const subject = sump === undefined ? { about: about ?? { kind: 'shop' } } : { sump }
  const what = counts === 'skim' ? { kind: 'skim' } : { kind: 'upkeep', task, result: 'done' }
  return { ...envelope(stamp), ...subject, ...what } as unknown as Entry
}
