import { type Catalogue, type Language, learn, type Speech, speakAs, speech } from '@sumpbook/fluid'
import { observed } from '../offline/observed.ts'
import { choiceFrom, type ReadingChoice, speechFor } from './reading.ts'

const key = 'sumpbook.reading'

/** What was chosen on this device. Some browsers forbid storage: then it is forgotten between visits. */
export const thisReading = observed<ReadingChoice>(choiceFrom(kept()))

/** A language's sentences; those of English stand where they are said. */
const catalogues: Record<Exclude<Language, 'en'>, () => Promise<{ catalogue: Catalogue }>> = {
  de: () => import('../words/de.ts'),
  es: () => import('../words/es.ts'),
}

/** It is spoken as was chosen; where the sentences of a language are out of reach, as it was spoken before. */
export async function speakHere(choice: ReadingChoice = thisReading.now()): Promise<void> {
  const asked = speechFor(choice, navigator.languages)
  await fetchWords(asked.language)
  spoken = asked
  document.documentElement.lang = asked.language
}
let spoken: Speech = speech()
speakAs(() => spoken)

async function fetchWords(language: Language): Promise<void> {
  if (language === 'en') return
  const { catalogue } = await catalogues[language]()
  learn(language, catalogue)
}

/** Chosen anew: it is spoken so at once, and from now on. */
export async function readAs(choice: ReadingChoice): Promise<void> {
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
