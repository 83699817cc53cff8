/** What a new id is made of: time and chance come in as arguments. */
export interface UuidSource {
  /** Milliseconds since 1970. */
  now(): number
  /** Fills the bytes with chance. `crypto.randomUUID` is missing on plain-http pages of a shop's network; this is not. */
  fill(bytes: Uint8Array<ArrayBuffer>): void
}

export const browserSource: UuidSource = {
  now: () => Date.now(),
  fill: (bytes) => crypto.getRandomValues(bytes),
}

/**
 * A maker of UUIDs of version 7: 48 bits of milliseconds, 12 bits that count up within a millisecond, 62 bits of chance.
 * The ids of one maker rise as text, in the order in which they were made, even where the clock is set back.
 *
 * Source: RFC 9562 §5.7, §6.2 method 1 (the counter), monotonic.
 */
export function uuidMaker({ now, fill }: UuidSource): () => string {
  let millis = 0
  let count = 0
  return () => {
    const time = now()
    const bytes = new Uint8Array(16)
    fill(bytes)
    if (time > millis) {
      millis = time
      // A start in the lower half leaves room to count up.
      count = ((bytes[6]! & 0x07) << 8) | bytes[7]!
    } else {
      count += 1
    }
    if (count > 0xfff) {
      millis += 1
      count = 0
    }
    return uuidOf(millis, count, bytes)
  }
}

function uuidOf(millis: number, count: number, bytes: Uint8Array): string {
  const time = millis.toString(16).padStart(12, '0')
  const counter = count.toString(16).padStart(3, '0')
  bytes[8] = 0x80 | (bytes[8]! & 0x3f)
  const chance = [...bytes.subarray(8)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  return `${time.slice(0, 8)}-${time.slice(8)}-7${counter}-${chance.slice(0, 4)}-${chance.slice(4)}`
}

export const newId = uuidMaker(browserSource)
