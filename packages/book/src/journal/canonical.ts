import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'

/** The one spelling of a JSON value by RFC 8785: two bodies are the same entry where their spellings are. */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value)
  if (text === undefined) throw new RangeError('a value that JSON cannot hold')
  return text
}

/** SHA-256 of UTF-8 text or bytes, in lower-case hexadecimal. */
export const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex')
