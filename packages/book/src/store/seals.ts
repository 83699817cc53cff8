import { canonicalJson, sha256 } from '../journal/canonical.ts'
import type { StoredThing } from './store.ts'

/**
 * A seal stands for a set of rows in any order: the sum of their SHA-256 modulo 2^256, as 64 hexadecimal digits. A row more
 * or less is an addition, so that a write need not read what is there. It shows what was changed by hand; somebody who
 * also works out the seal anew is caught only by a head that was printed or kept elsewhere.
 */
export type Seal = string

/** The seal of no rows. */
export const emptySeal: Seal = '0'.repeat(64)

const modulus = 1n << 256n

/** The seal with more rows in it. */
export function sealed(seal: Seal, rows: Iterable<string>): Seal {
  let sum = BigInt(`0x${seal}`)
  for (const row of rows) sum += BigInt(`0x${sha256(row)}`)
  return (sum % modulus).toString(16).padStart(64, '0')
}

/** The seal with one row taken out. */
export function unsealed(seal: Seal, row: string): Seal {
  const rest = BigInt(`0x${seal}`) - BigInt(`0x${sha256(row)}`)
  return (rest < 0n ? rest + modulus : rest).toString(16).padStart(64, '0')
}

/** What is sealed of a thing: all of it. */
export const thingRow = ({ kind, id, position, body }: StoredThing): string => canonicalJson([kind, id, position, body])

/** What is sealed of what the book says of itself. */
export const metaRow = ({ key, value }: { key: string; value: string }): string => canonicalJson([key, value])

/** What is sealed of an arrival: its instant and its envelope, which the chain leaves out. */
export const arrivalRow = ({ seq, receivedAt, envelope }: Arrived): string =>
  envelope == null ? `${seq} ${receivedAt}` : `${seq} ${receivedAt} ${envelope}`

interface Arrived {
  seq: number
  receivedAt: string
  envelope?: string | null
}
