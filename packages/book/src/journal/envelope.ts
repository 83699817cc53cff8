import { canonicalJson } from './canonical.ts'

/** What the server adds to an entry. It is kept beside the body, never in it: the body is what the device sent. */
export interface Envelope {
  /** Who was signed in, by id; null where a device sent it on its own. */
  person: string | null
  /** The device's token, where it has one. */
  device: string | null
  /**
   * By how many milliseconds the device's clock ran ahead of the server's when the entry was sent (behind: negative); null where the device did
   * not say what time it had. A time the device wrote, less this, is the time it was.
   */
  clockAheadMs: number | null
  /** Since when a keeper had to look at it first; missing where nobody had to. */
  heldSince?: string
}

export const envelopeText = (envelope: Envelope | null): string | null =>
  envelope === null ? null : canonicalJson(envelope)

export const readEnvelope = (text: string | null): Envelope | null =>
  text === null ? null : (JSON.parse(text) as Envelope)
