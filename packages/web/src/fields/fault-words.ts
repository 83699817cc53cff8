import { message, say, sayChoice } from '@sumpbook/fluid'

/** What may have been found, as the computation says it, and how it is said here; the first that fits. */
const foundWords: readonly (readonly [RegExp, string])[] = [
  [/^nothing$/, message('nothing')],
  [/^the ratio (?<text>".*")$/s, message('the ratio {text}')],
  [/^the unit (?<text>".*")$/s, message('the unit {text}')],
  [/^(?<text>".*"), which is a US or an imperial gallon$/s, message('{text}, which is a US or an imperial gallon')],
  [/^(?<text>".*"), which is a US or an imperial quart$/s, message('{text}, which is a US or an imperial quart')],
  [/^(?<text>".*"), which is a US or an imperial pint$/s, message('{text}, which is a US or an imperial pint')],
  [
    /^(?<text>".*"), which is a US or an imperial fluid ounce$/s,
    message('{text}, which is a US or an imperial fluid ounce'),
  ],
  [
    /^(?<text>".*"), which can be read as (?<one>\S+) or as (?<other>\S+)$/s,
    message('{text}, which can be read as {one} or as {other}'),
  ],
]

const expectedWords: readonly (readonly [RegExp, string])[] = [
  [/^a number such as 7\.5 or 7,5$/, message('a number such as 7.5 or 7,5')],
  [/^a number such as 7\.5$/, message('a number such as 7.5')],
  [/^a number that can be read one way only$/, message('a number that can be read one way only')],
  [/^a volume such as (?<example>.+)$/, message('a volume such as {example}')],
  [/^a length such as (?<example>.+)$/, message('a length such as {example}')],
  [/^a temperature such as (?<example>.+)$/, message('a temperature such as {example}')],
  [/^a hardness such as (?<example>.+)$/, message('a hardness such as {example}')],
  [/^a percentage such as (?<example>.+)$/, message('a percentage such as {example}')],
  [/^a strength such as (?<example>.+)$/, message('a strength such as {example}')],
  [/^a refractometer reading such as (?<example>.+)$/, message('a refractometer reading such as {example}')],
  [/^a pH such as (?<example>.+)$/, message('a pH such as {example}')],
  [/^an amount in a litre such as (?<example>.+)$/, message('an amount in a litre such as {example}')],
  [/^a conductivity such as (?<example>.+)$/, message('a conductivity such as {example}')],
  [/^a germ count such as (?<example>.+)$/, message('a germ count such as {example}')],
  [
    /^1 part concentrate first: "1:20" for 1 part to 20 parts water, or "1 in 20" for 1 part in 20 parts of mix$/,
    message(
      '1 part concentrate first: "1:20" for 1 part to 20 parts water, or "1 in 20" for 1 part in 20 parts of mix',
    ),
  ],
]

/** What was found, in the language that is spoken; a text that somebody typed stands as it is. */
export const sayFound = (found: string): string => said(found, foundWords)
export const sayExpected = (expected: string): string => said(expected, expectedWords)

function said(text: string, words: readonly (readonly [RegExp, string])[]): string {
  for (const [pattern, told] of words) {
    const match = pattern.exec(text)
    if (match === null) continue
    const { example, ...groups } = match.groups ?? {}
    return say(told, {
      ...groups,
      ...(example === undefined ? {} : { example: sayChoice(example.split(/, | or /)) }),
    })
  }
  return text
}
