import type { PageWords } from '../page-words.ts'

/** What pages other than the first say in English, which stands in the code until then: the build moves it here (`vite/words-apart.ts`). */
export const catalogue: PageWords = { list: [], named: {} }
