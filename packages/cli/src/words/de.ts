import { catalogue as book } from '@sumpbook/book/words/de'
import type { Catalogue } from '@sumpbook/fluid'
import commands from './de/commands.json' with { type: 'json' }

/** What commands say, and the book with them, in German. */
export const catalogue: Catalogue = { ...book, ...commands }
