import type { Entry } from '../api/types.ts'
import { envelope, type Stamp } from '../entry/stamp.ts'
import type { Read } from './read-class.ts'

/** Somebody looked and smelt, and found nothing. */
export const lookedEntry = (sump: string, stamp: Stamp): Entry => ({
  ...envelope(stamp),
  kind: 'observation',
  sump,
  signs: [],
})

/** The ways a sample is taken whose result comes later. */
export const sampleMethods = ['dip slide', 'slide for moulds', 'laboratory', 'standing sample'] as const
export type SampleWay = (typeof sampleMethods)[number]

/** A sample was taken; its result comes later. */
export const sampleEntry = (sump: string, method: SampleWay, stamp: Stamp): Entry => ({
  ...envelope(stamp),
  kind: 'reading',
  sump,
  pending: true,
  method,
})

/** The result of a sample: of its sample's time, read now. */
export const resultEntry = (
  sample: { id: string; sump: string; at: string; method: string },
  found: Readonly<Record<string, unknown>>,
  stamp: Stamp,
): Entry => ({
  ...envelope(stamp),
  kind: 'reading',
  sump: sample.sump,
  at: sample.at,
  readAt: stamp.at,
  answers: sample.id,
  method: sample.method,
  ...found,
})

/** What strips or a meter said of a sump; `typed` as it was typed. */
export const testReading = (
  sump: string,
  found: Readonly<Record<string, Read>>,
  typed: Readonly<Record<string, string>>,
  stamp: Stamp,
): Entry => ({ ...envelope(stamp), kind: 'reading', sump, ...found, typed: { ...typed } }) as Entry
