import { sayNumber } from './units.ts'

/** A name of several words inside a sentence: "Deionised water" loses its capital, "Osmosewasser" and "DI water" keep theirs. */
export const lowerFirst = (name: string) =>
  /^\p{Lu}\p{Ll}+ \p{Ll}/u.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name

/** A list in words: "a, b and c". */
export function sayList(parts: readonly string[]): string {
  if (parts.length <= 1) return parts[0] ?? ''
  return `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`
}

/** A count of things with its noun in the right number. */
export const sayCount = (count: number, one: string, many: string) =>
  `${sayNumber(count, 0)} ${count === 1 ? one : many}`
