import type { Reader } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { dueFollowUps } from '../diagnosis/due-follow-ups.ts'
import { dueDoses } from '../dose/due-doses.ts'
import { dueTests } from '../guidance/due-tests.ts'
import { dueJobs } from '../jobs/due-jobs.ts'
import { dueSamples } from '../samples/due-samples.ts'
import { dueStock } from '../stock/due-stock.ts'
import { dueUpkeep } from '../upkeep/due-upkeep.ts'
import { dueWaste } from '../waste/due-waste.ts'
import type { Due } from './due.ts'

/** For whom, and when. */
export interface DueQuestion {
  at: Date
  /** Entries after it do not count. */
  until: Date
  reader: Partial<Reader>
}

/** Reads one family of duties out of the records; queries never write. */
export type DueSource = (parts: BookParts, question: DueQuestion) => Promise<Due[]>

/** Where duties come from, one family a line. */
const sources: readonly DueSource[] = [
  dueFollowUps,
  dueTests,
  dueSamples,
  dueStock,
  dueWaste,
  dueJobs,
  dueUpkeep,
  dueDoses,
]

/** Everything that is due, most consequence first, then longest due. */
export async function readDue(parts: BookParts, question: DueQuestion): Promise<Due[]> {
  const found = await Promise.all(sources.map((source) => source(parts, question)))
  return found.flat().sort(byConsequence)
}

const byConsequence = (a: Due, b: Due) =>
  a.consequence - b.consequence || compare(a.dueOn, b.dueOn) || compare(a.name, b.name) || compare(a.key, b.key)

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
