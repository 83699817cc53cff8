import { expect, test } from 'vitest'
import { sayLater, sayPutOff, sayRound } from './today-list.ts'

test('the round is one line, however many sumps it has', () => {
  expect(sayRound(18)).toBe('The round: 18 sumps are due to be read.')
  expect(sayRound(1)).toBe('The round: 1 sump is due to be read.')
})

test('what waits is counted and named, no more than three names', () => {
  expect(sayLater(['Mill 3'])).toBe(
    'Beyond the six of this shift is 1 new thing: Mill 3. It comes up with the next shift; look now if there is time.',
  )
  expect(sayLater(['a', 'b', 'c'])).toContain('are 3 new things: a, b and c. They come')
  expect(sayLater(['a', 'b', 'c', 'd', 'e'])).toContain('are 5 new things: a, b, c and 2 others.')
})

test('what is put off is counted', () => {
  expect([sayPutOff(1), sayPutOff(2)]).toEqual(['1 is put off.', '2 are put off.'])
})
