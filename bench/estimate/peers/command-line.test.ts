import { expect, test } from 'vitest'
import type { BenchBook } from '../book.ts'
import { commandLine, estimatesOf } from './command-line.ts'

const figure = { mean: 7, sd: 1, low90: 5.4, high90: 8.6 }
const figures = { concentration: figure, volume: figure, hardness: figure }
const answer = {
  at: '2025-03-03T06:00:00Z',
  sumps: {
    s1: {
      now: { ...figures, evaporation: figure, carryOff: figure },
      ahead: [{ days: 7, ...figures }],
      crossing: { limit: 'concentration.high', likely: '2025-03-05T18:00:00Z' },
      doubts: [{ kind: 'misread', entry: 'e1', entries: ['e1'], at: '2025-03-01T06:00:00Z', probability: 0.9 }],
    },
  },
}
const question = { atMs: Date.parse(answer.at), aheadDays: [7] }

test('an answer in the form of the contract becomes the figures of a peer', () => {
  const estimate = estimatesOf(answer, question).get('s1')!
  expect(estimate.now.evaporation).toEqual(figure)
  expect(estimate.ahead).toEqual([{ days: 7, ...figures }])
  expect(estimate.crossingDays).toBe(2.5)
  const atMs = Date.parse('2025-03-01T06:00:00Z')
  expect(estimate.doubts).toEqual([{ kind: 'misread', sump: 's1', entry: 'e1', entries: ['e1'], atMs }])
})

test('a crossing of another limit is none of the concentration', () => {
  const hard = { sumps: { s1: { ...answer.sumps.s1, crossing: { limit: 'hardness.high', likely: answer.at } } } }
  expect(estimatesOf(hard, question).get('s1')!.crossingDays).toBeNull()
})

test('the program is asked with book, time and days, and its answer is read', () => {
  // A program that answers only if it is asked as the contract says.
  const program = `
    const [file, ...rest] = process.argv.slice(1)
    const book = JSON.parse(require('node:fs').readFileSync(file, 'utf8'))
    if (rest.join(' ') !== '--at 2025-03-03T06:00:00.000Z --ahead 7 --json') process.exit(2)
    if (book.format !== 'sumpbook-book/1') process.exit(3)
    console.log(${JSON.stringify(JSON.stringify(answer))})`
  const peer = commandLine('asked', [process.execPath, '-e', program, '--'])
  const book = { format: 'sumpbook-book/1' } as BenchBook
  expect(peer.estimate(book, question).get('s1')!.now.volume).toEqual(figure)
  expect(() => peer.estimate({ ...book, format: 'other' } as unknown as BenchBook, question)).toThrow('ended with 3')
})
