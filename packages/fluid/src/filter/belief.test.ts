import { expect, test } from 'vitest'
import { assignBelief, blur, copyBelief, copyFirst, dropBelief, largestSize, newBelief, renew } from './belief.ts'
import { newTape } from './tape.ts'

const three = () => {
  const belief = newBelief(3)
  belief.mean.set([1, 2, 3])
  belief.cov.set([4, 1, 2, 1, 9, 3, 2, 3, 16])
  return belief
}

test('a new belief is certain of zeros', () => {
  expect(newBelief(2)).toEqual({ size: 2, mean: new Float64Array(2), cov: new Float64Array(4), tape: null })
})

test('a belief has one quantity at least and as many at most as there is working memory for', () => {
  expect(newBelief(1).mean).toHaveLength(1)
  expect(newBelief(largestSize).cov).toHaveLength(largestSize ** 2)
  for (const size of [0, largestSize + 1, Number.NaN]) expect(() => newBelief(size)).toThrow(/^size /)
})

test('a copy goes its own way, and nothing of it is written down', () => {
  const belief = three()
  belief.tape = newTape()
  const copy = copyBelief(belief)
  expect(copy).toEqual({ ...three(), tape: null })
  copy.mean[0] = 7
  blur(copy, 0, 5)
  expect([belief.mean[0], belief.cov[0]]).toEqual([1, 4])
})

test('of a belief the first quantities can be looked at alone', () => {
  const two = copyFirst(three(), 2)
  expect(two).toEqual({ size: 2, mean: new Float64Array([1, 2]), cov: new Float64Array([4, 1, 1, 9]), tape: null })
})

test('a belief that was given back is copied into again, and nothing of it is left', () => {
  const dropped = copyBelief(three())
  dropped.mean.fill(99)
  dropped.cov.fill(99)
  dropBelief(dropped)
  const again = copyBelief(three())
  expect(again).toBe(dropped)
  expect(again).toEqual(three())
  expect(copyBelief(three())).not.toBe(again)
})

test('one of another size, or one that is taped, is not copied into', () => {
  const taped = copyBelief(three())
  taped.tape = newTape()
  dropBelief(taped)
  expect(copyBelief(three())).not.toBe(taped)
  const small = newBelief(2)
  dropBelief(small)
  expect(copyBelief(three())).not.toBe(small)
})

test('one belief is made like another without being it', () => {
  const [to, from] = [newBelief(3), three()]
  assignBelief(to, from)
  expect(to).toEqual(from)
  from.mean[1] = 8
  expect(to.mean[1]).toBe(2)
})

test('what is renewed has a new mean and variance and is tied to nothing', () => {
  const belief = three()
  renew(belief, 1, 5, 0.25)
  expect([...belief.mean]).toEqual([1, 5, 3])
  expect([...belief.cov]).toEqual([4, 0, 2, 0, 0.25, 0, 2, 0, 16])
})

test('what is blurred is less certain, its ties stay', () => {
  const belief = three()
  blur(belief, 2, 1.5)
  expect([...belief.cov]).toEqual([4, 1, 2, 1, 9, 3, 2, 3, 17.5])
})
