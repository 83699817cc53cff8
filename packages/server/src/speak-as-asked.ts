import { AsyncLocalStorage } from 'node:async_hooks'
import {
  type Catalogue,
  knownNumbers,
  type Language,
  languages,
  learn,
  nearestLanguage,
  type Speech,
  type SystemOfUnits,
  speakAs,
} from '@sumpbook/fluid'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { z } from 'zod'

declare module 'fastify' {
  interface FastifyRequest {
    /** How whoever asks reads. */
    speech: Speech
  }
}

/** Where whoever asks says what it is read in beside the language. */
const figuresHeader = 'sumpbook-figures'
const english: Speech = { language: 'en', numbers: 'en' }

/** As a request is answered, its speech goes along. */
const spoken = new AsyncLocalStorage<Speech>()

/** What says how an answer is read, for the API's description. */
export const speechHeaders = z.object({
  'accept-language': z
    .string()
    .optional()
    .describe(`Language of the sentences: ${languages.join(', ')}. English where none of them is named`),
  [figuresHeader]: z
    .string()
    .optional()
    .describe(
      'Apart from the language: signs in figures (BCP 47) and units of volume, `numbers=de-CH, units=us`. Units are metric, us or imperial; those of the shop without it. What is not known counts as not said',
    ),
})

/**
 * Every answer is said in the language of whoever asks, two at once each in their own. Tells whoever keeps answers what they depend on.
 *
 * @param standard for who names no language that is spoken here
 */
export function speakAsAsked(app: FastifyInstance, standard: Speech = english): void {
  speakAs(() => spoken.getStore() ?? standard)
  app.decorateRequest('speech', null as never)
  app.addHook('onRequest', (request, _reply, done) => {
    request.speech = speechOf(request.headers, standard)
    learnt(request.speech.language).then(() => spoken.run(request.speech, done), done)
  })
  // Reading a body leaves the way it came on: what is said after it is said as before it.
  app.addHook('preValidation', (request, _reply, done) => spoken.run(request.speech, done))
  app.addHook('onSend', async (request, reply) => {
    if (!request.url.startsWith('/api/')) return
    reply.header('vary', ['Accept-Language', 'Sumpbook-Figures', ...varied(reply.getHeader('vary'))].join(', '))
    reply.header('content-language', request.speech.language)
  })
}

const varied = (header: unknown): string[] => (typeof header === 'string' && header !== '' ? [header] : [])

/** How somebody reads by the headers of what they ask. */
export function speechOf(headers: FastifyRequest['headers'], standard: Speech = english): Speech {
  const preferred = preferredOf(headers['accept-language'] ?? '')
  const own = preferred.find((tag) => languages.some((language) => language === languageOf(tag)))
  const asked =
    own === undefined ? standard : { language: nearestLanguage([own]), numbers: knownNumbers(own) ?? languageOf(own) }
  const figures = figuresOf(headers[figuresHeader])
  const units = figures.get('units')
  return {
    ...asked,
    numbers: knownNumbers(figures.get('numbers') ?? '') ?? asked.numbers,
    ...(isUnits(units) ? { units } : {}),
  }
}

const languageOf = (tag: string) => tag.split('-')[0]!.toLowerCase()
const isUnits = (text: string | undefined): text is SystemOfUnits =>
  text === 'metric' || text === 'us' || text === 'imperial'

/** Tags of `Accept-Language` (RFC 9110, 12.5.4), best first; what is not wanted at all left out. */
function preferredOf(header: string): string[] {
  return header
    .split(',')
    .map((part) => {
      const [tag = '', ...parameters] = part.split(';').map((piece) => piece.trim())
      const weight = parameters.find((parameter) => parameter.startsWith('q='))?.slice(2)
      return { tag, weight: weight === undefined ? 1 : Number(weight) }
    })
    .filter(({ tag, weight }) => tag !== '' && weight > 0)
    .sort((a, b) => b.weight - a.weight)
    .map(({ tag }) => tag)
}

/** A dictionary of tokens (RFC 9651, 3.2): `numbers=de-CH, units=us`. */
function figuresOf(header: string | string[] | undefined): Map<string, string> {
  return new Map(
    [header ?? '']
      .flat()
      .join()
      .split(',')
      .flatMap((part) => {
        const [, name, value] = /^\s*([a-z]+)=([\w-]+)\s*$/.exec(part) ?? []
        return name === undefined ? [] : [[name, value!] as const]
      }),
  )
}

const known = new Map<Language, Promise<void>>([['en', Promise.resolve()]])
const catalogues: Record<Exclude<Language, 'en'>, () => Promise<{ catalogue: Catalogue }>> = {
  de: () => import('@sumpbook/book/words/de'),
  es: () => import('@sumpbook/book/words/es'),
}

/** A language's sentences are read when somebody first asks in it. */
function learnt(language: Language): Promise<void> {
  const before = known.get(language)
  if (before !== undefined) return before
  const now = catalogues[language as Exclude<Language, 'en'>]().then(({ catalogue }) => learn(language, catalogue))
  known.set(language, now)
  return now
}
