import { IntlMessageFormat } from 'intl-messageformat'
import { madeOnce } from './made-once.ts'
import { inLanguage, type Language, speech } from './speech.ts'

/** What stands in the braces of a message. Figures come written (`sayNumber`, `sayVolume`); a bare number is for `plural`. */
export type Values = Readonly<Record<string, string | number>>

/**
 * A sentence, or a part of one, in the language that is spoken: the English one is its name in the catalogues. Messages are those of ICU:
 * `{name}`, `{count, plural, one {# sump} other {# sumps}}`, `{kind, select, …}`.
 *
 * A message stands whole in the source, never put together from pieces: other languages order their words otherwise.
 *
 * @throws where a value of the message is missing
 * @example say('Add {volume} at {strength}', { volume: '38 L', strength: '18 %' })
 */
export function say(text: string, values?: Values): string {
  const { language, numbers } = speech()
  const told = inLanguage(language, text)
  if (values === undefined && !told.includes('{')) return told
  const said = formatOf(told, language, numbers).format(values) as string
  // The point of a shortened word, "am 3. Dez.", is the point of the sentence too.
  return said.includes('..') ? said.replace(/(?<!\.)\.\.(?=\s|$)/g, '.') : said
}

/** Marks a message that stands in a table and is said elsewhere, `say(words[reason])`, so that catalogues are held to it. */
export const message = <Text extends string>(text: Text): Text => text

/** A text becomes a format once, then is used a hundred times. All messages in all languages, for a few ways of writing figures. */
const formats = madeOnce<string, string, IntlMessageFormat>(30_000)

/** @param tags whether `<name>…</name>` in the message is a part to be filled by a function */
export function formatOf(told: string, language: Language, numbers: string, tags = false): IntlMessageFormat {
  return formats(`${language} ${numbers} ${tags}`, told, () => {
    return new IntlMessageFormat(told, language, undefined, {
      ignoreTag: !tags,
      formatters: {
        // The language decides what is one and what is many, the reader how a figure is written; thousands apart as `sayNumber` has them.
        getNumberFormat: (_, options) =>
          figures(numbers, options === undefined ? '' : JSON.stringify(options), () => {
            return new Intl.NumberFormat(numbers, { useGrouping: 'min2', ...options })
          }),
        getDateTimeFormat: (...how) => new Intl.DateTimeFormat(...how),
        getPluralRules: (locales, options) =>
          plurals(String(locales), options?.type ?? '', () => new Intl.PluralRules(locales, options)),
      },
    })
  })
}

/** Making one of these takes a hundred times as long as using it, and there are few. */
const figures = madeOnce<string, string, Intl.NumberFormat>(1000)
const plurals = madeOnce<string, string, Intl.PluralRules>(1000)
