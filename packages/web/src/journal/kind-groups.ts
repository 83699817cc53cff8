import { message } from '@sumpbook/fluid'
import type { Entry } from '../api/types.ts'

/** What a person looks for, in the shop's words: as one chooses it, as a sentence names it, and the kinds of entries that are it. */
export const kindGroups = {
  readings: [message('Readings and looks'), message('readings and looks'), ['reading', 'observation']],
  pours: [message('Pours and fresh charges'), message('pours and fresh charges'), ['addition', 'charge']],
  out: [
    message('Taken out: drawn off, moved, skimmed'),
    message('taken out: drawn off, moved, skimmed'),
    ['drawoff', 'transfer', 'skim'],
  ],
  work: [message('Jobs and days idle'), message('jobs and days idle'), ['job', 'idle']],
  care: [message('Cleanouts and upkeep'), message('cleanouts and upkeep'), ['cleanout', 'upkeep', 'signoff']],
  water: [
    message('Water analyses, checks and counts'),
    message('water analyses, checks and counts'),
    ['analysis', 'check'],
  ],
  stock: [message('Stock'), message('stock'), ['order', 'receipt', 'issue']],
  waste: [message('Waste'), message('waste'), ['stored', 'pickup']],
  notes: [message('Notes for the next shift'), message('notes for the next shift'), ['handover']],
  later: [message('Put off and passed by'), message('put off and passed by'), ['snooze', 'skip']],
  setup: [message('Set-up'), message('set-up'), ['setup']],
  settled: [message('Set aside and settled'), message('set aside and settled'), ['void', 'verdict']],
} as const satisfies Record<string, readonly [choice: string, words: string, kinds: readonly Entry['kind'][]]>

export type KindGroup = keyof typeof kindGroups

type Grouped = (typeof kindGroups)[KindGroup][2][number]
/** Does not compile while a kind of entry is in no group. */
export const isEveryKindGrouped: Exclude<Entry['kind'], Grouped> extends never ? true : never = true
