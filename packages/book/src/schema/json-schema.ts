import { z } from 'zod'
import { bookFile, bookFormat } from './book-file.ts'

/** The book file as a JSON Schema (draft 2020-12), made from the schemas that judge it; published under `docs/schema/`. */
export function bookFileJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(bookFile, { io: 'input', reused: 'ref' })
  return { $id: `urn:sumpbook:${bookFormat}`, title: 'Sumpbook book file', ...schema }
}
