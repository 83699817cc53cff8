import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { bookFileJsonSchema } from '../packages/book/src/schema/json-schema.ts'

test('the published JSON Schema is that of the code (npm run schema writes it)', () => {
  const published = readFileSync(new URL('../docs/schema/sumpbook-book-1.schema.json', import.meta.url), 'utf8')
  expect(JSON.parse(published)).toEqual(bookFileJsonSchema())
})
