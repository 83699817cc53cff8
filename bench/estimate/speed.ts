// `npx node bench/estimate/speed.ts`: microseconds of one predict and update, beside the general-purpose kalman-filter package.
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { digits, median } from '../machine.ts'
import { keepResult } from './keep-result.ts'
import { furthestApart, ourStart, ourStep, readingAt, theirStart, theirStep } from './speed/linear-problem.ts'
import { filterLoop, type Loop, modelLoop, stepsInARow } from './speed/steps.ts'

const { values } = parseArgs({ options: { 'no-file': { type: 'boolean', default: false } } })

/** Median microseconds a step over rounds of a warm loop: by the clock, and of the processor. */
function timed(loop: Loop, { rounds, steps }: { rounds: number; steps: number }) {
  for (let round = 0; round < rounds / 5; round++) loop(steps)
  const [clock, busy]: number[][] = [[], []]
  for (let round = 0; round < rounds; round++) {
    const [from, cpu] = [process.hrtime.bigint(), process.cpuUsage()]
    loop(steps)
    clock!.push(Number(process.hrtime.bigint() - from) / 1000 / steps)
    busy!.push(process.cpuUsage(cpu).user / steps)
  }
  return {
    microseconds: digits(median(clock!)),
    userMicroseconds: digits(median(busy!)),
    quickest: digits(Math.min(...clock!)),
  }
}

function theirLoop(): Loop {
  const { filter, state: start } = theirStart()
  return (steps) => {
    let state = start
    for (let step = 0; step < steps; step++) {
      if (step % stepsInARow === 0) state = start
      state = theirStep(filter, state, readingAt(step % stepsInARow))
    }
  }
}

/** The same answers, or there is nothing to compare. */
function agreement(): number {
  const ours = ourStart()
  let { filter, state } = theirStart()
  let most = 0
  for (let step = 0; step < stepsInARow; step++) {
    ourStep(ours, readingAt(step))
    state = theirStep(filter, state, readingAt(step))
    most = Math.max(most, furthestApart(ours, state))
  }
  if (!(most <= 1e-9)) throw new Error(`the filters lie ${most} apart`)
  return most
}

function allocation(): { steps: number; bytesAStep: Record<'model' | 'filter' | 'oneObjectAStep', number> } {
  const file = fileURLToPath(new URL('speed/allocation.ts', import.meta.url))
  const nursery = ['--min-semi-space-size=512', '--max-semi-space-size=512']
  const { status, stdout, stderr } = spawnSync(process.execPath, [...nursery, file], { encoding: 'utf8' })
  if (status !== 0) throw new Error(`allocation.ts ended with ${status}: ${stderr}`)
  return JSON.parse(stdout)
}

const apart = agreement()
const model = timed(modelLoop(), { rounds: 200, steps: 10_000 })
const filter = timed(filterLoop(), { rounds: 200, steps: 10_000 })
const peer = timed(theirLoop(), { rounds: 50, steps: 200 })
const times = (ours: { microseconds: number }) => digits(peer.microseconds / ours.microseconds)
const memory = allocation()
const figures = {
  furthestApart: apart,
  predictAndUpdate: model,
  filterAlone: filter,
  kalmanFilterPackage: { version: '2.3.0', ...peer },
  timesFaster: { predictAndUpdate: times(model), filterAlone: times(filter) },
  allocation: memory,
  limits: [
    {
      what: 'one predict and update, µs',
      atMost: 1.5,
      found: model.microseconds,
      foundOfProcessor: model.userMicroseconds,
      met: model.microseconds <= 1.5,
    },
    { what: 'times faster than the package', atLeast: 25, found: times(model), met: times(model) >= 25 },
    {
      what: 'bytes that a step leaves',
      atMost: 0.1,
      found: memory.bytesAStep.model,
      met: memory.bytesAStep.model <= 0.1,
    },
  ],
}
process.stdout.write(`${JSON.stringify(figures, null, 2)}\n`)
if (!values['no-file']) keepResult('speed', figures)
