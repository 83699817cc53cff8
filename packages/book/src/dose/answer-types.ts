import type { AdditiveKind, DoseAnswer, DoseUnit, DoseWords, Figure } from '@sumpbook/fluid'

/** What a sump may be given of one additive now, with why and what to mind. */
export interface SumpDose {
  additive: { id: string; name: string; kind: AdditiveKind; who: 'keeper' | 'owner'; label: string }
  unit: DoseUnit
  answer: DoseAnswer
  words: DoseWords
  /** The last doses since the charge, youngest first. */
  given: { entry: string; at: string; by: string | null; amount: number | null }[]
  /** Doses that went in and go against the label, a sentence each. */
  contradictions: { entry: string; text: string }[]
}

/** All that a sump may be given. */
export interface SumpDoses {
  sump: string
  name: string
  at: string
  volume: Figure | null
  /** pH has fallen since the fresh charge and nobody has said why. */
  isFallUnexplained: boolean
  doses: SumpDose[]
}
