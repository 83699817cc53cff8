import type { PageWords } from '../page-words.ts'

/** What pages other than the first say in German, all of it in `../de.ts` until then: the build moves it here (`vite/words-apart.ts`). */
export const catalogue: PageWords = { list: [], named: {} }
