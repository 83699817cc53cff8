import { expect, test } from 'vitest'
import { blur, newBelief } from './belief.ts'
import { learn } from './learn.ts'
import { spread } from './spread.ts'
import { newTape, stopHere } from './tape.ts'

test('moves between two readings are written down as one: the later of the earlier', () => {
  const belief = newBelief(2)
  belief.tape = newTape()
  belief.cov.set([1, 0, 0, 1])
  // [[1, 2], [0, 1]], then the first times 3: [[3, 6], [0, 1]].
  spread(belief, 1, Float64Array.of(1, 2))
  spread(belief, 1, Float64Array.of(3, 0))
  expect(belief.tape.steps).toHaveLength(0)
  learn(belief, Float64Array.of(1, 0), 1, 1)
  expect(belief.tape.steps).toHaveLength(1)
  const [{ before, move, after }] = belief.tape.steps as [(typeof belief.tape.steps)[number]]
  expect([...before.cov]).toEqual([1, 0, 0, 1])
  expect([...move]).toEqual([3, 6, 0, 1])
  // 9 + 36 of the first, 6 between them.
  expect([...after.cov]).toEqual([45, 6, 6, 1])
  expect(belief.tape.moving).toBe(null)
})

test('noise alone is a move that changes nothing, readings without noise between them are none', () => {
  const belief = newBelief(1)
  belief.tape = newTape()
  belief.cov[0] = 2
  learn(belief, Float64Array.of(1), 0, 1)
  expect(belief.tape.steps).toHaveLength(0)
  blur(belief, 0, 1)
  learn(belief, Float64Array.of(1), 0, 1)
  expect(belief.tape.steps.map(({ move }) => [...move])).toEqual([[1]])
})

test('a moment is marked with the moves before it; where nothing is taped nothing is marked', () => {
  const belief = newBelief(1)
  stopHere(belief, 1)
  expect(belief.tape).toBe(null)
  belief.tape = newTape()
  stopHere(belief, 2)
  blur(belief, 0, 1)
  stopHere(belief, 3)
  expect(belief.tape.stops).toEqual([
    { steps: 0, label: 2 },
    { steps: 1, label: 3 },
  ])
})
