import { type Catalogue, type Language, learn, type Speech, speakAs, speech } from '@sumpbook/fluid'
import { observed } from '../offline/observed.ts'
import type { PageWords } from '../words/page-words.ts'
import { choiceFrom, type ReadingChoice, speechFor } from './reading.ts'

const key = 'sumpbook.reading'

/** What was chosen on this device. Some browsers forbid storage: then it is forgotten between visits. */
export const thisReading = observed<ReadingChoice>(choiceFrom(kept()))

/** What the first page says; of English it stands where it is said. */
const firstWords: Record<Exclude<Language, 'en'>, () => Promise<{ catalogue: Catalogue }>> = {
  de: () => import('../words/de.ts'),
  es: () => import('../words/es.ts'),
}

/** What all other pages say. */
const pageWords: Record<Language, () => Promise<{ catalogue: PageWords }>> = {
  en: () => import('../words/pages/en.ts'),
  de: () => import('../words/pages/de.ts'),
  es: () => import('../words/pages/es.ts'),
}

/** It is spoken as was chosen; where the sentences of a language are out of reach, as it was spoken before. */
export async function speakHere(choice: ReadingChoice = thisReading.now()): Promise<void> {
  const asked = speechFor(choice, navigator.languages)
  await (asked.language === 'en' ? null : fetchFirstWords(asked.language))
  spoken = asked
  document.documentElement.lang = asked.language
}
let spoken: Speech = speech()
speakAs(() => spoken)

const fetchFirstWords = once(async (language: Exclude<Language, 'en'>) => {
  const { catalogue } = await firstWords[language]()
  learnMore(language, catalogue)
})

const fetchPageWords = once(async (language: Language) => {
  const { list, named } = (await pageWords[language]()).catalogue
  learnMore(language, { ...Object.fromEntries(list.entries()), ...named })
})

/** What was fetched of each language so far. */
const known = new Map<Language, Catalogue>()
function learnMore(language: Language, more: Catalogue): void {
  known.set(language, { ...known.get(language), ...more })
  learn(language, known.get(language)!)
}

/** What is fetched is not fetched again; what could not be is asked for next time. */
function once<L extends Language>(fetchWords: (language: L) => Promise<void>): (language: L) => Promise<void> {
  const here = new Set<L>()
  return async (language) => {
    if (here.has(language)) return
    await fetchWords(language)
    here.add(language)
  }
}

/**
 * Code other than that of the first page, with what it says: nothing of it may be shown before its words are there.
 *
 * @throws where code or words are out of reach
 */
export async function withItsWords<Code>(code: Promise<Code>): Promise<Code> {
  const [here] = await Promise.all([code, fetchPageWords(spoken.language)])
  return here
}

/** Chosen anew: it is spoken so at once, and from now on. */
export async function readAs(choice: ReadingChoice): Promise<void> {
  // The page that is open is said anew.
  await fetchPageWords(speechFor(choice, navigator.languages).language)
  await speakHere(choice)
  try {
    localStorage.setItem(key, JSON.stringify(choice))
  } catch {
    // See above.
  }
  thisReading.set(choice)
}

/** Another open page of this device chose. */
export function watchOtherReading(): void {
  addEventListener('storage', (event) => {
    if (event.key === key) void readAs(choiceFrom(event.newValue)).catch((error: unknown) => console.error(error))
  })
}

/** What says on each question to the server how the answer is read. */
export function readingHeaders(): Record<string, string> {
  const { language, numbers, units } = spoken
  return {
    'accept-language': language,
    'sumpbook-figures': `numbers=${numbers}${units === undefined ? '' : `, units=${units}`}`,
  }
}

function kept(): string | null {
  try {
    return localStorage.getItem(key)
  } catch {
    return null
  }
}
