/** A time of day. */
export interface Clock {
  hour: number
  minute: number
  second: number
}

const clock = /^(\d{1,2})(?:[:.h]\s?(\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?)?\s*(a\.?\s?m\.?|p\.?\s?m\.?|uhr|h|hrs|hs)?$/i

/**
 * Reads "14:30", "14.30 Uhr", "2:30 PM", "7 am", "14h30"; null where it is no time of day.
 *
 * @example readClock('2:30 PM') // { hour: 14, minute: 30, second: 0 }
 */
export function readClock(text: string): Clock | null {
  const found = clock.exec(text.trim())
  if (found === null || (found[2] === undefined && found[4] === undefined)) return null
  const half = found[4]?.[0]?.toLowerCase()
  const hour = hourOf(Number(found[1]), half === 'a' || half === 'p' ? half : null)
  const [minute, second] = [Number(found[2] ?? 0), Number(found[3] ?? 0)]
  return hour === null || minute > 59 || second > 59 ? null : { hour, minute, second }
}

/** The time that a fraction of a day makes, to the second; workbooks keep times so. */
export function clockOfFraction(fraction: number): Clock {
  const seconds = Math.round(fraction * 86_400) % 86_400
  return { hour: Math.floor(seconds / 3600), minute: Math.floor((seconds % 3600) / 60), second: seconds % 60 }
}

function hourOf(hour: number, half: 'a' | 'p' | null): number | null {
  if (half === null) return hour <= 23 ? hour : null
  if (hour < 1 || hour > 12) return null
  return (hour % 12) + (half === 'p' ? 12 : 0)
}
