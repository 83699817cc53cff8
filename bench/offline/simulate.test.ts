/** A short run of what `node bench/offline/run.ts` does ten thousand times; and that a fault is found where there is one. */
import { expect, onTestFinished, test } from 'vitest'
import { bookForRuns, serverClock, simulate } from './simulate.ts'

test('where the signal is bad every entry is in the book exactly once, or on the phone with the reason', {
  timeout: 240_000,
}, async () => {
  const book = await bookForRuns(() => serverClock.now)
  onTestFinished(() => book.close())
  const all = { requests: 0, lost: 0, unheard: 0, doubled: 0, failed: 0, kills: 0, held: 0, refused: 0 }
  for (let seed = 1; seed <= 200; seed++) {
    const { wrong, happened } = await simulate(seed, book)
    expect(wrong, `seed ${seed}`).toEqual([])
    for (const what of Object.keys(all) as (keyof typeof all)[]) all[what] += happened[what]
  }
  // All of it happened.
  for (const [what, times] of Object.entries(all)) expect(times, what).toBeGreaterThan(20)
})

test('a phone that promised what only its open page holds would be found out', { timeout: 120_000 }, async () => {
  const book = await bookForRuns(() => serverClock.now)
  onTestFinished(() => book.close())
  const runs = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => async () => (await simulate(seed, book, () => true)).wrong)
  const wrong: string[] = []
  for (const run of runs) wrong.push(...(await run()))
  expect(wrong.some((what) => what.startsWith('lost: '))).toBe(true)
})
