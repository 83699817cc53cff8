/** What every entry of this device carries: when, by whom, on what. */
export interface Stamp {
  /** RFC 3339 with the device's offset. */
  at: string
  recordedAt: string
  by?: string
  device?: string
  newId(): string
}

/** An instant with the offset of the clock it was read from: "2026-11-25T08:30:00.000+01:00". */
export function withOffset(time: Date, offsetMinutes = -time.getTimezoneOffset()): string {
  const local = new Date(time.getTime() + offsetMinutes * 60_000).toISOString().slice(0, -1)
  const size = Math.abs(offsetMinutes)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${local}${offsetMinutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`
}

/** The fields of an entry's envelope that a stamp gives, with an id of its own. */
export function envelope({ newId, ...fields }: Stamp) {
  return { id: newId(), ...fields }
}
