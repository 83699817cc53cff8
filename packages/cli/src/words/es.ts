import { catalogue as book } from '@sumpbook/book/words/es'
import type { Catalogue } from '@sumpbook/fluid'
import commands from './es/commands.json' with { type: 'json' }

/** What commands say, and the book with them, in Spanish. */
export const catalogue: Catalogue = { ...book, ...commands }
