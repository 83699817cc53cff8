import { shortName } from './short-name.ts'

/** The languages that sentences are said in. English is written in the source; the others are catalogues of it. */
export const languages = ['en', 'de', 'es'] as const
export type Language = (typeof languages)[number]

/** How somebody reads: the language of the sentences, and apart from it the signs in figures and the units. */
export interface Speech {
  language: Language
  /** BCP 47, of figures and money: "de-CH" writes 1’234.5 whatever the language of the sentence round it. */
  numbers: string
  /** Of volumes and what goes with them; without it, those of the shop. */
  units?: SystemOfUnits
}
export type SystemOfUnits = 'metric' | 'us' | 'imperial'

/** One language's sentences by their English ones. */
export type Catalogue = Readonly<Record<string, string>>

const english: Speech = { language: 'en', numbers: 'en' }
let ask: () => Speech = () => english
const catalogues = new Map<Language, Catalogue>()

/**
 * Whose language is spoken from now on. A phone speaks its person's, a command its caller's, a server that of whoever asks just
 * now: the function is asked at every sentence.
 */
export function speakAs(whose: () => Speech): void {
  ask = whose
}

/**
 * What goes into a file that other programs read is said in English, whoever asks for it.
 *
 * @param work waits for nothing: what comes after a wait is said as before
 */
export function inEnglish<T>(work: () => T): T {
  const before = ask
  ask = () => english
  try {
    return work()
  } finally {
    ask = before
  }
}

/** How it is spoken just now; English where nobody said otherwise. */
export const speech = (): Speech => ask()

/** In what units it is read just now: as whoever reads chose, else as the shop does. */
export const unitsHere = (shop: { units: SystemOfUnits }): SystemOfUnits => speech().units ?? shop.units

/** Makes a language's sentences known. What was known of it is forgotten. */
export function learn(language: Language, catalogue: Catalogue): void {
  catalogues.set(language, catalogue)
}

/** The sentence of a catalogue for an English one; the English one where the language does not have it. */
export const inLanguage = (language: Language, message: string): string =>
  known(catalogues.get(language), message) ?? message

/** By its English, or by the short name of that, as the app's catalogues are kept. */
const known = (catalogue: Catalogue | undefined, message: string): string | undefined =>
  catalogue === undefined ? undefined : (catalogue[message] ?? catalogue[shortName(message)])

/** BCP 47 of dates: as figures are written where that is a form of the language, else as the language is usually written. */
export function datesLocale({ language, numbers }: Speech = speech()): string {
  if (numbers === language || numbers.startsWith(`${language}-`)) return numbers === 'en' ? 'en-GB' : numbers
  return language === 'en' ? 'en-GB' : language
}

/**
 * The nearest of the languages to what somebody prefers.
 *
 * @param preferred BCP 47, best first, as a browser or an `Accept-Language` names them
 * @example nearestLanguage(['pt', 'es-MX', 'en']) // 'es'
 */
export function nearestLanguage(preferred: readonly string[]): Language {
  for (const tag of preferred) {
    const found = languages.find((language) => language === tag.split('-')[0]!.toLowerCase())
    if (found !== undefined) return found
  }
  return 'en'
}

/**
 * A tag as far as the signs of its figures are known, such as "de-CH" of "de-CH-1996"; null for what no standard knows ("C@posix").
 *
 * @param tag BCP 47
 */
export function knownNumbers(tag: string): string | null {
  try {
    const { baseName } = new Intl.Locale(tag)
    const isKnown = Intl.NumberFormat.supportedLocalesOf(baseName).length > 0
    return isKnown ? new Intl.NumberFormat(baseName).resolvedOptions().locale : null
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}
