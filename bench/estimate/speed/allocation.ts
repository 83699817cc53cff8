// Started by speed.ts with a nursery that holds all that a million steps could throw away: what the heap has grown by, a step.
import { PerformanceObserver } from 'node:perf_hooks'
import { setTimeout as wait } from 'node:timers/promises'
import { filterLoop, modelLoop } from './steps.ts'

const steps = 1e6
let collections = 0
new PerformanceObserver((list) => {
  collections += list.getEntries().length
}).observe({ entryTypes: ['gc'] })

async function bytesAStep(loop: (steps: number) => void): Promise<number> {
  loop(200_000)
  await wait(50)
  collections = 0
  const before = process.memoryUsage().heapUsed
  loop(steps)
  const grown = process.memoryUsage().heapUsed - before
  await wait(50)
  if (collections > 0) throw new Error(`${collections} collections while allocation was measured`)
  return grown / steps
}

const model = await bytesAStep(modelLoop())
const filter = await bytesAStep(filterLoop())
/** The measurement itself, on steps of which each leaves one number of 12 to 16 bytes behind. */
const kept: object[] = []
const control = await bytesAStep((count) => {
  kept.length = 0
  for (let step = 0; step < count; step++) if (kept.push({ step }) > 1000) kept.length = 0
})
process.stdout.write(JSON.stringify({ steps, bytesAStep: { model, filter, oneObjectAStep: control } }))
