import type { Plugin } from 'vite'

const parser = /\/@formatjs\/icu-messageformat-parser\/index\.js$/

/** What stands in the parser of messages for skeletons alone, `{n, number, ::currency/EUR}`, and what stands there in its place. */
const forSkeletons: readonly (readonly [what: RegExp, instead: string])[] = [
  [
    /^import \{ ([\w, ]+) \} from "@formatjs\/icu-skeleton-parser";$/m,
    'const [$1] = Array(3).fill(() => { throw new RangeError("a message with a skeleton") });',
  ],
  // Which hours people of a region count by.
  [/^const timeData = \{$[\s\S]*?^\};$/m, 'const timeData = {};'],
]

/** The parser without them. @throws where it is another one than was looked at */
export function withoutSkeletons(code: string): string {
  for (const [what] of forSkeletons)
    if (!what.test(code)) throw new Error(`the parser of messages has nothing like ${what}: look what of it is needed`)
  return forSkeletons.reduce((less, [what, instead]) => less.replace(what, instead), code)
}

/**
 * Leaves out of the built app what reads skeletons of figures and dates: no message has one (`tests/words.test.ts`), since figures come
 * written. That is 3 KB less for the first page.
 */
export function plainMessages(): Plugin {
  return {
    name: 'plain-messages',
    apply: 'build',
    transform: (code, id) => (parser.test(id) ? { code: withoutSkeletons(code), map: null } : null),
  }
}
