import type { Catalogue } from '@sumpbook/fluid'

/** What pages other than the first say in a language. */
export interface PageWords {
  /** Sentences that the built code names by their place in it. */
  list: readonly string[]
  /** The others, by the short names of the English ones. */
  named: Catalogue
}
