import { expect, test } from 'vitest'
import { listAsCode, namedAsCode } from './words-as-code.ts'

/** What code comes to. */
const run = async (code: string): Promise<unknown> =>
  ((await import(`data:text/javascript,${encodeURIComponent(`export default ${code}`)}`)) as { default: unknown })
    .default

test.each([[[]], [['Füllung wechseln']], [['Sag "{name}"', '', 'a \\n b `c`', '38 L']]])(
  'a list comes out of its code as it went in: %j',
  async (texts) => {
    expect(await run(listAsCode(texts))).toEqual(texts)
  },
)

test.each([{}, { f4v8wp: 'zu mager', '3jszgw': 'zu fett' }])('so do texts by their names: %j', async (named) => {
  expect(await run(namedAsCode(named))).toEqual(named)
})

test('a text of several lines is refused: it would come out as several', () => {
  expect(() => listAsCode(['one', 'two\nthree'])).toThrow('a sentence with a line break: two\nthree')
})
