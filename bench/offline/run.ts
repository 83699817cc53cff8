// `node bench/offline/run.ts [--seeds 10000] [--from N]`: rounds without signal, each from a seed of its own; ends with 1 at the first that loses, doubles or changes an entry.
import { parseArgs } from 'node:util'
import { keepFigures } from '../record/keep-figures.ts'
import { bookForRuns, serverClock, simulate } from './simulate.ts'

const { values } = parseArgs({
  options: { seeds: { type: 'string', default: '10000' }, from: { type: 'string', default: '1' } },
})
const [first, seeds] = [Number(values.from), Number(values.seeds)]
const began = performance.now()
const sums: Record<string, number> = { entries: 0 }
let wrong: string[] = []
let book = await bookForRuns(() => serverClock.now)
let seed = first
for (; seed < first + seeds && wrong.length === 0; seed++) {
  // A book of its own now and then: a long journal is not what is measured here.
  if (seed % 200 === 0) {
    await book.close()
    book = await bookForRuns(() => serverClock.now)
  }
  const run = await simulate(seed, book)
  wrong = run.wrong.map((what) => `seed ${seed}: ${what}`)
  sums.entries! += run.written
  for (const [what, times] of Object.entries(run.happened)) sums[what] = (sums[what] ?? 0) + times
}
await book.close()
const seconds = Math.round((performance.now() - began) / 1000)
keepFigures('offline', { seeds: seed - first, from: first, ...sums, wrong, seconds }, wrong.length === 0)
