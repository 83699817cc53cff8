import type { SumpSpec } from '@sumpbook/fluid'

/** What the reading of a journal has to remember from one day to the next, so that it can go on from any day. */
export interface Translation {
  /** Each meter's last count. */
  meters: Map<string, number>
  /** The sumps that anything was written of, in the order in which they first were. */
  sumps: Map<string, SumpMemory>
  /** What each water's last analysis found. */
  waters: Map<string, WaterMemory>
}

export interface SumpMemory {
  /** What the estimator was last told of it. */
  spec: SumpSpec
  /** Of the last charge; null before the first. */
  charge: { fluid: string; lot: string | null } | null
}

/** A figure found, and what the water itself was said to have at that time: a set-up that says otherwise is younger. */
export interface WaterMemory {
  hardness: { found: number; said: number | null } | null
  chloride: { found: number; said: number | null } | null
}

export const freshTranslation = (): Translation => ({ meters: new Map(), sumps: new Map(), waters: new Map() })

export const copyTranslation = ({ meters, sumps, waters }: Translation): Translation => ({
  meters: new Map(meters),
  sumps: new Map([...sumps].map(([id, memory]) => [id, { ...memory }])),
  waters: new Map(waters),
})

/** A translation as plain JSON. */
export interface PackedTranslation {
  meters: [string, number][]
  sumps: [string, SumpMemory][]
  waters: [string, WaterMemory][]
}

export const packTranslation = ({ meters, sumps, waters }: Translation): PackedTranslation => ({
  meters: [...meters],
  sumps: [...sumps],
  waters: [...waters],
})

export const unpackTranslation = ({ meters, sumps, waters }: PackedTranslation): Translation =>
  copyTranslation({ meters: new Map(meters), sumps: new Map(sumps), waters: new Map(waters) })
