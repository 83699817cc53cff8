/** What is answered about samples and what laboratories found; no code, so that the web app can read it. */
import type { SampleMethod, SampleState, SampleWindow, SlideRead, Trend } from '@sumpbook/fluid'
import type { Value } from '../schema/values.ts'

/** A sample that was taken. */
export interface TakenSample {
  /** Id of the entry that took it. */
  id: string
  sump: string
  at: string
  method: SampleMethod
  window: SampleWindow
  /** UTC text. */
  readFrom: string
  readTo: string
  /** Id and time of the charge that was in the sump then; null before the first that was written down. */
  charge: { entry: string; at: string } | null
  /** `answered`: a result counts; `never-read`: its window closed long ago, or a later sample took its place. */
  state: SampleState | 'answered' | 'never-read'
}

/** A result that answers no sample, and why it does not. */
export interface StrayResult {
  id: string
  sump: string
  at: string
  answers: string
  why: 'no-such-entry' | 'withdrawn' | 'no-sample' | 'other-sump' | 'before-its-sample'
}

/** A sample with its words. */
export interface SampleLine extends TakenSample {
  /** Of its sump; its id where the book does not know it. */
  name: string
  /** What is to be done with it, one sentence; empty of one that is answered. */
  says: string
  results: ResultLine[]
  /** Id of the result that counts. */
  result: string | null
}

export interface ResultLine {
  id: string
  readAt: string
  /** What was read, and what it is worth. */
  says: string
  slide: SlideRead | null
  /** Where the classes come from; null without any. */
  source: string | null
}

export interface StrayLine extends StrayResult {
  name: string
  says: string
}

/** Samples that wait, their results, and results that answer none. */
export interface SamplesAnswer {
  at: string
  guidance: string
  /** Growing, to be read, past their window: what is to be read first comes first. */
  pending: SampleLine[]
  /** Answered, newest first. */
  answered: SampleLine[]
  /** Given up, newest first. */
  neverRead: SampleLine[]
  strays: StrayLine[]
}

/** What a laboratory or a strip found again and again at one sump. */
export interface AnalyteSeries {
  /** In the language of whoever asks where it is a field of a reading; else as the laboratory calls it. */
  name: string
  unit: string
  /** Of germs: their steps are powers of ten. */
  isCount: boolean
  /** Oldest first, at the time of sampling. */
  points: {
    entry: string
    at: string
    value: Value
    charge: string | null
    method: string | null
    lab: string | null
  }[]
  /** Of the present charge, in units (of germs: powers of ten) a week; null of fewer than three figures. */
  trend: Pick<Trend, 'slope' | 'low' | 'high' | 'direction' | 'n'> | null
  /** How it moves, one sentence. */
  says: string
}
