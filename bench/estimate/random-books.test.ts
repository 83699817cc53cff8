import { expect, test } from 'vitest'
import { estimateFile } from '../../packages/book/src/index.ts'
import { randomBook } from './special/random-book.ts'

const books = 300
const atOnce = 50

/** What is wrong with an answer, by the path to it. */
interface Wrongs {
  /** Thrown, not finite, out of order, no probability. */
  odd: string[]
  /** Wider than can be: whatever lies between 0 and 100 has an sd of 50 at most. */
  tooWide: string[]
}

function findWrongs(value: unknown, path: string, wrongs: Wrongs): void {
  if (typeof value === 'number') {
    const isSound = Number.isFinite(value) && (!path.endsWith('/probability') || (value >= 0 && value <= 1))
    if (!isSound) wrongs.odd.push(`${path} is ${value}`)
  }
  if (typeof value !== 'object' || value === null) return
  for (const [key, inner] of Object.entries(value)) findWrongs(inner, `${path}/${key}`, wrongs)
  if (!('mean' in value && 'low90' in value)) return
  const { mean, sd, low90, high90 } = value as { mean: number; sd: number; low90: number; high90: number }
  const text = `${path} is ${JSON.stringify(value)}`
  if (!(low90 >= 0 && low90 <= mean && mean <= high90 && sd > 0)) wrongs.odd.push(text)
  if (path.endsWith('/concentration') && !(high90 <= 100 && sd <= 50)) wrongs.tooWide.push(text)
}

const seeds = Array.from({ length: books }, (_, i) => i + 1)
const groups = Array.from({ length: books / atOnce }, (_, i) => seeds.slice(i * atOnce, (i + 1) * atOnce))

test.each(groups)('books that nobody can have meant get figures that can be, %i and the next 49', async (...group) => {
  const wrongs: Wrongs = { odd: [], tooWide: [] }
  for (const seed of group) {
    const { book, atMs } = randomBook(seed)
    try {
      const question = { at: new Date(atMs).toISOString(), ahead: [0, 7, 14, 365] }
      findWrongs((await estimateFile(JSON.stringify(book), question)).sumps, `book ${seed}`, wrongs)
    } catch (error) {
      wrongs.odd.push(`book ${seed} threw ${error}`)
    }
  }
  expect.soft(wrongs.odd).toEqual([])
  expect.soft(wrongs.tooWide).toEqual([])
})

test('random books have every kind of entry that an estimate hears of, equal instants, and times decades apart', () => {
  const entries = seeds.flatMap((seed) => randomBook(seed).book.entries)
  expect([...new Set(entries.map(({ kind }) => kind))].sort()).toEqual(
    'addition analysis charge cleanout drawoff idle job reading setup skim transfer verdict void'.split(' '),
  )
  const years = entries.map(({ at }) => new Date(at).getUTCFullYear())
  expect([Math.min(...years), Math.max(...years)]).toEqual([1995, 2055])
  const twice = randomBook(1).book.entries.map(({ at }) => at)
  expect(new Set(twice).size).toBeLessThan(twice.length)
})
