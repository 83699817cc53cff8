import {
  knownNumbers,
  type Language,
  languages,
  nearestLanguage,
  type Speech,
  type SystemOfUnits,
} from '@sumpbook/fluid'

/** How somebody wants to read on a device, each apart; null: as the browser, and units as the shop. */
export interface ReadingChoice {
  language: Language | null
  /** BCP 47, by whose signs figures are written. */
  numbers: string | null
  units: SystemOfUnits | null
}

export const nothingChosen: ReadingChoice = { language: null, numbers: null, units: null }

/** Each language by its own name: whoever looks for it reads that. */
export const tongues: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch', es: 'Español' }

/** Signs of figures that people ask for, by a language that writes so (CLDR). */
export const numberSigns = ['en', 'de', 'de-CH', 'fr'] as const

const systems: readonly SystemOfUnits[] = ['metric', 'us', 'imperial']

/** A choice as it was kept; what is no choice (any more) counts as none. */
export function choiceFrom(text: string | null): ReadingChoice {
  let kept: Partial<Record<keyof ReadingChoice, unknown>> | null
  try {
    kept = JSON.parse(text ?? 'null') as typeof kept
  } catch {
    kept = null
  }
  const { language, numbers, units } = kept ?? {}
  return {
    language: languages.find((one) => one === language) ?? null,
    numbers: typeof numbers === 'string' ? knownNumbers(numbers) : null,
    units: systems.find((one) => one === units) ?? null,
  }
}

/**
 * How it is spoken on a device.
 *
 * @param preferred the browser's languages, best first; some name one that no standard knows ("en-US@posix")
 */
export function speechFor({ language, numbers, units }: ReadingChoice, preferred: readonly string[]): Speech {
  const spoken = language ?? nearestLanguage(preferred)
  return {
    language: spoken,
    numbers: numbers ?? knownNumbers(preferred[0] ?? '') ?? spoken,
    ...(units === null ? {} : { units }),
  }
}
