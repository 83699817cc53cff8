import type { Remedy } from './remedy.ts'
import type { SourceKey } from './sources.ts'

/** How often something is seen where its cause is at work: named classes, since nobody has counted. */
export const frequencies = { rarely: 0.1, sometimes: 0.3, often: 0.6, 'nearly always': 0.9 } as const
export type Frequency = keyof typeof frequencies

/** How often it is seen where none of the causes is at work. */
export const leaks = { 'hardly ever': 0.01, 'now and then': 0.03, commonly: 0.1 } as const
export type Leak = keyof typeof leaks

/** How often a cause is at work in a sump about which somebody asks. */
export const priors = { rare: 0.01, seldom: 0.02, 'now and then': 0.05, common: 0.1 } as const
export type Prior = keyof typeof priors

/** What a cause shows: the sign or finding, how often, and who says so. */
export type Link = readonly [finding: string, frequency: Frequency, source: SourceKey]

/** Something that can be wrong with a fluid, a machine or a habit. */
export interface Cause {
  /** In English words, the same in every answer: "bacterial growth". */
  id: string
  /** What is going on, one sentence. */
  says: string
  prior: Prior
  shows: readonly Link[]
  /** What would confirm it, a sentence each. */
  checks: readonly string[]
  /** What helps; the fluid's sheet and its supplier come first. */
  remedies: readonly Remedy[]
}
