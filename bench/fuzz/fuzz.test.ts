/** Short runs of what `node bench/fuzz/run.ts` does a million times; and that a fault is found where there is one. */
import { expect, test } from 'vitest'
import { fuzz } from './fuzz.ts'
import { diceOf, mutated, tokensOf } from './mutate.ts'
import { bookFile } from './parsers/book-file.ts'
import { quantities } from './parsers/quantities.ts'
import { csv, xlsx } from './parsers/sheets.ts'

test.each([
  [csv, 1500],
  [xlsx, 600],
  [bookFile, 1500],
  [quantities, 5000],
])(
  '$name: whatever comes is taken or refused, and never takes long',
  async (parser, cases) => {
    const report = await fuzz(parser, { seed: 20261125, cases })
    expect(report.findings).toEqual([])
    expect(report.taken + report.refused).toBe(cases)
    // Both ways are walked: what is only ever refused is not read far.
    expect(report.taken).toBeGreaterThan(cases / 50)
    expect(report.refused).toBeGreaterThan(cases / 50)
  },
  60_000,
)

test('a parser that breaks is found, with the number of the case that repeats it', async () => {
  const fragile = {
    name: 'fragile',
    tryOne: (dice: (below: number) => number) => {
      if (dice(50) === 7) throw new TypeError('undefined is not a function')
      return 'taken' as const
    },
  }
  const { findings } = await fuzz(fragile, { seed: 1, cases: 500 })
  expect(findings.length).toBeGreaterThan(2)
  const again = await fuzz(fragile, { seed: 1, from: findings[0]!.n, cases: 1 })
  expect(again.findings).toMatchObject([{ n: findings[0]!.n, what: expect.stringContaining('not a function') }])
})

test('one that works long is found, one that only waits a little is not', async () => {
  const worked = () => process.threadCpuUsage().user / 1000
  const slow = {
    name: 'slow',
    tryOne: () => {
      const end = worked() + 1050
      while (worked() < end) Math.sqrt(end)
      return 'taken' as const
    },
  }
  expect((await fuzz(slow, { seed: 1, cases: 1 })).findings).toMatchObject([
    { n: 0, what: expect.stringMatching(/^took [1-9]\d\d\d ms$/) },
  ])
  const waits = { name: 'waits', tryOne: () => new Promise<'taken'>((resolve) => setTimeout(resolve, 1050, 'taken')) }
  expect((await fuzz(waits, { seed: 1, cases: 1 })).findings).toEqual([])
})

test('the same seed and number make the same case, another number another', () => {
  const seeds = [Buffer.from('Date,Machine,Brix\n2026-10-05,Mill 7,3.4\n')]
  const make = (n: number) => Buffer.from(mutated(diceOf(5, n), seeds, tokensOf(['x', '"']))).toString('latin1')
  expect(make(3)).toBe(make(3))
  expect(new Set(Array.from({ length: 50 }, (_, n) => make(n))).size).toBeGreaterThan(30)
})
