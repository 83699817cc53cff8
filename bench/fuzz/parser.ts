import type { Dice } from './mutate.ts'

/** Something that reads what people and their programs made, tried with what nobody would make. */
export interface FuzzedParser {
  name: string
  /** Makes and reads one case. @throws anything but a refusal: a fault that was found */
  tryOne(dice: Dice): Promise<'taken' | 'refused'> | 'taken' | 'refused'
}

/** A case that was no refusal, or took too long. */
export interface Finding {
  n: number
  what: string
}

export interface FuzzReport {
  name: string
  seed: number
  cases: number
  taken: number
  refused: number
  slowestMs: number
  slowestCase: number
  findings: Finding[]
}

/** Longer than this is a hang. */
export const hangMs = 1000
