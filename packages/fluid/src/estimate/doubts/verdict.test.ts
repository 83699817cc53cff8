import { expect, test } from 'vitest'
import { estimateSump } from '../ahead/estimate-sump.ts'
import type { ShopEvent } from '../events.ts'
import { keptSump, readingOf, shopOf, sumpOf, trueDays, truePour } from '../testing.ts'

/** A sump that somebody filled up with water unwritten: read, and in doubt. */
function doubted() {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 7)
  truePour(truth, 200 - truth.volume, 0)
  const odd = readingOf('s', at + 7, truth)
  const answered = (answer: string, entries = [odd.id]) =>
    shopOf([...events, odd, { kind: 'verdict', id: 'v', at: at + 7.1, sump: 's', entries, answer }])
  return { events, odd, truth, answered, at: at + 7.2 }
}

test('an answer ends the doubt, and only the courses in which it was so go on', () => {
  const { answered, at, truth } = doubted()
  for (const answer of ['unlogged-water', 'unlogged-addition', 'stands', 'misread']) {
    const shop = answered(answer)
    expect(sumpOf(shop).surprises).toEqual([])
    expect(sumpOf(shop).branches).toHaveLength(1)
    expect(estimateSump(shop, 's', at, []).doubts).toEqual([])
  }
  const { now } = estimateSump(answered('unlogged-water'), 's', at, [])
  expect(Math.abs(now.concentration.mean - truth.concentration)).toBeLessThan(0.3)
})

test('a figure answered as another sump’s is set aside like one that was misread', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  // As likely misread as concentrate that nobody wrote.
  const odd = readingOf('s', at + 4, truth, { brix: 10.1 })
  expect(sumpOf(shopOf([...events, odd])).branches.length).toBeGreaterThan(1)
  const after = (answer: string) => {
    const verdict: ShopEvent = { kind: 'verdict', id: 'v', at: at + 4.1, sump: 's', entries: [odd.id], answer }
    return estimateSump(shopOf([...events, odd, verdict]), 's', at + 5, [])
  }
  expect(after('wrong-sump')).toEqual(after('misread'))
  expect(Math.abs(after('misread').now.concentration.mean - truth.concentration)).toBeLessThan(0.4)
})

test('an answer about other records changes nothing', () => {
  const { answered, events, odd, at } = doubted()
  const unanswered = estimateSump(shopOf([...events, odd]), 's', at, [])
  expect(unanswered.doubts).toHaveLength(1)
  expect(estimateSump(answered('misread', ['something else']), 's', at, [])).toEqual(unanswered)
})

test('an answer that no course tells ends the doubt and leaves the courses', () => {
  const { answered, at } = doubted()
  const shop = answered('unlogged-charge')
  expect(estimateSump(shop, 's', at, []).doubts).toEqual([])
  expect(sumpOf(shop).branches.length).toBeGreaterThanOrEqual(1)
})

test('a doubt that was settled long ago can be answered still', () => {
  const { events, odd, truth, at } = doubted()
  const told: ShopEvent[] = [...events, odd]
  for (const day of [3, 7, 10, 14, 17]) {
    trueDays(truth, day === 3 || day === 10 || day === 17 ? 3 : 4)
    told.push(readingOf('s', at + day, truth))
  }
  expect(estimateSump(shopOf(told), 's', at + 18, []).doubts).toHaveLength(1)
  told.push({ kind: 'verdict', id: 'v', at: at + 17.5, sump: 's', entries: [odd.id], answer: 'stands' })
  expect(estimateSump(shopOf(told), 's', at + 18, []).doubts).toEqual([])
})
