import { say } from '../words/index.ts'
import { sayList } from './phrases.ts'

/** "The round: 18 sumps are due to be read." */
export const sayRound = (sumps: number) =>
  say('The round: {sumps, plural, one {# sump is} other {# sumps are}} due to be read.', { sumps })

/** So many names are said; of more it is said how many. */
const mostNames = 3

/** "Beyond the six of this shift are 5 new things: Mill 3, Mill 5, Lathe 2 and 2 others. They come up with the next shift; look now if there is time." */
export function sayLater(names: readonly string[]): string {
  const said = names.slice(0, mostNames)
  const others = names.length - said.length
  const who = [...said, ...(others > 0 ? [say('{others, plural, one {# other} other {# others}}', { others })] : [])]
  return say(
    'Beyond the six of this shift {count, plural, one {is # new thing} other {are # new things}}: {who}. {count, plural, one {It comes} other {They come}} up with the next shift; look now if there is time.',
    { count: names.length, who: sayList(who) },
  )
}

/** "2 are put off." */
export const sayPutOff = (count: number) =>
  say('{count, plural, one {# is put off.} other {# are put off.}}', { count })
