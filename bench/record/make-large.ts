// `node bench/record/make-large.ts --times 500000`: makes the large book alone, into .cache.
import { fileURLToPath } from 'node:url'
import { timesAsked } from './keep-figures.ts'
import { makeLargeBook } from './large-book.ts'

const readings = timesAsked(500_000)
const file = fileURLToPath(new URL(`../../.cache/large-book/${readings}/book.sqlite`, import.meta.url))
process.stdout.write(`${JSON.stringify(await makeLargeBook({ file, readings, sumps: 500 }))}\n`)
