// Writes the JSON Schema of the book file to docs/schema; a test keeps the two the same.
import { writeFileSync } from 'node:fs'
import { bookFileJsonSchema } from '../packages/book/src/schema/json-schema.ts'

writeFileSync(
  new URL('../docs/schema/sumpbook-book-1.schema.json', import.meta.url),
  `${JSON.stringify(bookFileJsonSchema(), null, 2)}\n`,
)
