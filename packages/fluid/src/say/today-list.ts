import { sayCount, sayList } from './phrases.ts'

/** "The round: 18 sumps are due to be read." */
export const sayRound = (sumps: number) => `The round: ${sayCount(sumps, 'sump is', 'sumps are')} due to be read.`

/** So many names are said; of more it is said how many. */
const mostNames = 3

/** "Beyond the six of this shift are 5 new things: Mill 3, Mill 5, Lathe 2 and 2 others. They come up with the next shift; look now if there is time." */
export function sayLater(names: readonly string[]): string {
  const said = names.slice(0, mostNames)
  const others = names.length - said.length
  const who = sayList([...said, ...(others > 0 ? [sayCount(others, 'other', 'others')] : [])])
  const [are, come] = names.length === 1 ? ['is', 'It comes'] : ['are', 'They come']
  return `Beyond the six of this shift ${are} ${sayCount(names.length, 'new thing', 'new things')}: ${who}. ${come} up with the next shift; look now if there is time.`
}

/** "2 are put off." */
export const sayPutOff = (count: number) => (count === 1 ? '1 is put off.' : `${count} are put off.`)
