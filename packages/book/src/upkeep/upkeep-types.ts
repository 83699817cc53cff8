import type { Punctuality } from '@sumpbook/fluid'
import type { UpkeepTask } from '../schema/things/upkeep-task.ts'

/** A task with when it was done and when it is due. */
export interface UpkeepLine extends UpkeepTask {
  /** Of its sump or thing, as people call it. */
  name: string
  /** Shop's days, `2026-03-03`; null where it was never done. */
  lastOn: string | null
  /** Who did it then. */
  lastBy: string | null
  dueOn: string
  isDue: boolean
  punctuality: Punctuality
  /** One sentence: when it was done, when it is due, whether it slips. */
  sentence: string
}

/** The shop's calendar of upkeep. */
export interface Upkeep {
  at: string
  /** What is due first comes first. */
  tasks: UpkeepLine[]
  /** What a shop like this does besides, for it to take on or leave; common practice, no source. */
  proposals: ProposedTask[]
}

/** A task that a shop may take on. */
export interface ProposedTask extends UpkeepTask {
  name: string
  /** Why it is proposed. */
  because: 'common practice' | 'done before'
}
