import type { UpkeepTaskDocument } from '../book-document.ts'

/** What comes back in so many days, by the example shop's own plan. */
export const upkeepTasks: readonly UpkeepTaskDocument[] = [
  { id: 'paper', task: 'Filter paper changed', sump: 'central', everyDays: 21 },
  { id: 'conveyor-tc1', task: 'Chip conveyor cleaned', sump: 'tc1', everyDays: 35 },
  { id: 'conveyor-mill7', task: 'Chip conveyor cleaned', sump: 'mill7', everyDays: 42 },
  { id: 'magnet-drum', task: 'Magnet drum wiped', sump: 'grinder', everyDays: 28 },
  {
    id: 'refractometer',
    task: 'Refractometer set to zero',
    about: { kind: 'instrument', id: 'refractometer' },
    everyDays: 28,
    counts: 'check',
  },
  {
    id: 'mixer',
    task: 'Mixing station checked',
    about: { kind: 'mixer', id: 'mixer' },
    everyDays: 42,
    counts: 'check',
  },
  {
    id: 'tap',
    task: 'Tap water analysed',
    about: { kind: 'water', id: 'tap' },
    everyDays: 182,
    counts: 'analysis',
  },
]
