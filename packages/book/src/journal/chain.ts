import { sha256 } from './canonical.ts'

/** The head of an empty book. */
export const emptyHead: Head = { seq: 0, hash: '0'.repeat(64) }

/** The last entry to arrive: its place and the hash that stands for everything up to it. */
export interface Head {
  seq: number
  hash: string
}

/**
 * The chain in order of arrival: hash = SHA-256(previous hash ‖ SHA-256(canonical body) ‖ seq), hexadecimal text
 * throughout. Whoever changes, drops or inserts an entry changes every hash after it.
 */
export function nextHead(head: Head, canonicalBody: string): Head {
  const seq = head.seq + 1
  return { seq, hash: chainHash(head.hash, canonicalBody, seq) }
}

/** The hash of an entry at its place after another. */
export const chainHash = (previousHash: string, canonicalBody: string, seq: number): string =>
  sha256(`${previousHash}${sha256(canonicalBody)}${seq}`)
