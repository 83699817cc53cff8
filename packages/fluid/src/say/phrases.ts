import { speech } from '../words/index.ts'
import { sayNumber } from './units.ts'

/**
 * A name of several words inside an English sentence: "Deionised water" loses its capital, "Osmosewasser" and "DI water" keep theirs.
 * In other languages a name stands as it was written.
 */
export const lowerFirst = (name: string) =>
  speech().language === 'en' && /^\p{Lu}\p{Ll}+ \p{Ll}/u.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name

/** A list in words: "a, b and c", in the language that is spoken. */
export function sayList(parts: readonly string[]): string {
  const { language } = speech()
  // British English has no comma before its "and".
  const locale = language === 'en' ? 'en-GB' : language
  let format = lists.get(locale)
  if (format === undefined) {
    format = new Intl.ListFormat(locale, { type: 'conjunction' })
    lists.set(locale, format)
  }
  return format.format(parts)
}

/** Making a format takes far longer than using it: each is made once. */
const lists = new Map<string, Intl.ListFormat>()

/** A count of things with its noun in the right number. */
export const sayCount = (count: number, one: string, many: string) =>
  `${sayNumber(count, 0)} ${count === 1 ? one : many}`
