import type { BenchBook } from '../book.ts'

/** A book made by hand for one case, and what must come out of it. */
export interface Special<Expected> {
  /** What happened. */
  story: string
  book: BenchBook
  /** The instant to ask about. */
  atMs: number
  expected: Expected
}

/** What may be said of a sump: a mean that lies within `within` of `value`, and the value inside the interval. */
export interface Near {
  value: number
  within: number
}
