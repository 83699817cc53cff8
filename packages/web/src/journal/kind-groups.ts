import type { Entry } from '../api/types.ts'

/** What a person looks for, in the shop's words, and the kinds of entries that are it. */
export const kindGroups = {
  readings: ['Readings and looks', ['reading', 'observation']],
  pours: ['Pours and fresh charges', ['addition', 'charge']],
  out: ['Taken out: drawn off, moved, skimmed', ['drawoff', 'transfer', 'skim']],
  work: ['Jobs and days idle', ['job', 'idle']],
  care: ['Cleanouts and upkeep', ['cleanout', 'upkeep', 'signoff']],
  water: ['Water analyses, checks and counts', ['analysis', 'check']],
  stock: ['Stock', ['order', 'receipt', 'issue']],
  waste: ['Waste', ['stored', 'pickup']],
  notes: ['Notes for the next shift', ['handover']],
  later: ['Put off and passed by', ['snooze', 'skip']],
  setup: ['Set-up', ['setup']],
  settled: ['Set aside and settled', ['void', 'verdict']],
} as const satisfies Record<string, readonly [words: string, kinds: readonly Entry['kind'][]]>

export type KindGroup = keyof typeof kindGroups

type Grouped = (typeof kindGroups)[KindGroup][1][number]
/** Does not compile while a kind of entry is in no group. */
export const isEveryKindGrouped: Exclude<Entry['kind'], Grouped> extends never ? true : never = true
