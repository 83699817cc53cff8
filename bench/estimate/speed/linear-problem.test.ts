import { expect, test } from 'vitest'
import { furthestApart, ourStart, ourStep, readingAt, theirStart, theirStep } from './linear-problem.ts'

test('our filter and a general-purpose one agree at every step of the same problem', () => {
  const ours = ourStart()
  let { filter, state } = theirStart()
  for (let step = 0; step < 200; step++) {
    ourStep(ours, readingAt(step))
    state = theirStep(filter, state, readingAt(step))
    expect(furthestApart(ours, state)).toBeLessThan(1e-9)
  }
})

test('what lies apart is seen', () => {
  const { state } = theirStart()
  const ours = ourStart()
  // The second quantity has a variance of 2: a hundred-millionth of its sd away.
  ours.mean[1]! += 1e-8 * Math.sqrt(2)
  expect(furthestApart(ours, state)).toBeCloseTo(1e-8, 12)
})
