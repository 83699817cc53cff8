import type { Doubt } from '../metrics/doubts.ts'
import type { Belief } from './matrix-filter.ts'
import { type KnownLosses, letDaysPass, M, row, V } from './sump-belief.ts'
import type { SumpHistory } from './sump-history.ts'
import { stretches, type WorkDays } from './work-days.ts'

export interface PlainFilterOptions {
  name: string
  /** Surprises beyond this many sd are left out once and called misread; null takes everything as it comes. */
  gate: number | null
  /** Losses that are known from elsewhere; null learns them. */
  losses: ((sump: string, fromMs: number, toMs: number) => KnownLosses) | null
}

/** A run of the filter along one sump's entries. */
export interface Run {
  history: SumpHistory
  options: PlainFilterOptions
  days: WorkDays
  belief: Belief
  ms: number
  doubts: Doubt[]
  /** Whether the last °Brix was left out. */
  leftOut: boolean
  meters: Map<string, number>
}

/** Lets the time up to an instant go by. */
export function moveTo(run: Run, toMs: number): void {
  const { losses } = run.options
  for (const { day, days, fromMs, toMs: end } of stretches(run.days, run.ms, toMs)) {
    const known = losses === null ? null : losses(run.history.sump.id, fromMs, end)
    letDaysPass(run.belief, days, run.days.share(day), known)
  }
  run.ms = Math.max(run.ms, toMs)
}

/** Percent in the sump, and how it changes with each state. */
export function strengthOf({ mean }: Belief): { percent: number; slope: number[] } {
  const [volume, concentrate] = [mean[V]!, mean[M]!]
  const percent = (100 * concentrate) / volume
  return { percent, slope: row([V, -percent / volume], [M, 100 / volume]) }
}
