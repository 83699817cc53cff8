import { speech } from '../words/index.ts'
import { sayNumber } from './units.ts'

/**
 * A name of several words inside an English sentence: "Deionised water" loses its capital, "Osmosewasser" and "DI water" keep theirs.
 * In other languages a name stands as it was written.
 */
export const lowerFirst = (name: string) =>
  speech().language === 'en' && /^\p{Lu}\p{Ll}+ \p{Ll}/u.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name

/** A list in words: "a, b and c", in the language that is spoken. */
export const sayList = (parts: readonly string[]): string => listed(parts, 'conjunction')

/** What may be chosen, in words: "a, b or c", in the language that is spoken. */
export const sayChoice = (parts: readonly string[]): string => listed(parts, 'disjunction')

function listed(parts: readonly string[], type: 'conjunction' | 'disjunction'): string {
  const { language } = speech()
  const key = `${type} ${language}`
  let format = lists.get(key)
  if (format === undefined) {
    // British English has no comma before its "and".
    format = new Intl.ListFormat(language === 'en' ? 'en-GB' : language, { type })
    lists.set(key, format)
  }
  return format.format(parts)
}

/** Making a format takes far longer than using it: each is made once. */
const lists = new Map<string, Intl.ListFormat>()

/** A count of things with its noun in the right number. */
export const sayCount = (count: number, one: string, many: string) =>
  `${sayNumber(count, 0)} ${count === 1 ? one : many}`
