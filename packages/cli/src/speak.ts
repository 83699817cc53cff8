import { parseArgs } from 'node:util'
import { type Catalogue, type Language, learn, speakAs } from '@sumpbook/fluid'
import type { World } from './command.ts'
import { readSpeech } from './settings.ts'

const catalogues: Record<Exclude<Language, 'en'>, () => Promise<{ catalogue: Catalogue }>> = {
  de: () => import('./words/de.ts'),
  es: () => import('./words/es.ts'),
}

/** A command speaks as its line, its environment or its folder asks; what else stands in the line is the command's own to judge. */
export async function speakAsAsked(args: readonly string[], world: World): Promise<void> {
  const options = { language: { type: 'string' }, numbers: { type: 'string' } } as const
  const { values } = parseArgs({ args: [...args], options, strict: false, allowPositionals: true })
  const speech = readSpeech({ language: textOf(values.language), numbers: textOf(values.numbers) }, world)
  if (speech.language !== 'en') learn(speech.language, (await catalogues[speech.language]()).catalogue)
  speakAs(() => speech)
}

/** An option without its value is the command's to complain of. */
const textOf = (value: string | boolean | undefined) => (typeof value === 'string' ? value : undefined)
