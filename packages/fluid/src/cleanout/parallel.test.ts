import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type ParallelJob, parallelPlan } from './parallel.ts'

const job = (id: string, ...stretches: [hours: number, needs?: Record<string, number>][]): ParallelJob => ({
  id,
  stretches: stretches.map(([hours, needs = {}], i) => ({ name: `${i}`, hours, needs })),
})
const person = { person: 1 }

test('what needs nothing runs side by side', () => {
  expect(parallelPlan({ jobs: [job('a', [3]), job('b', [2])], capacity: {} })).toMatchObject({
    finish: 3,
    downtime: 5,
    exact: true,
  })
})

test('what needs the same person comes one after another', () => {
  const plan = parallelPlan({ jobs: [job('a', [3, person]), job('b', [2, person])], capacity: { person: 1 } })
  expect(plan).toMatchObject({ finish: 5, lowerBound: 5, exact: true })
})

test('two people do two at once', () => {
  const jobs = ['a', 'b', 'c'].map((id) => job(id, [2, person]))
  expect(parallelPlan({ jobs, capacity: { person: 2 } }).finish).toBe(4)
})

test('the other machine is drained while cleaner circulates', () => {
  const jobs = [job('a', [1, person], [3], [1, person]), job('b', [1, person], [3], [1, person])]
  expect(parallelPlan({ jobs, capacity: { person: 1 } }).finish).toBe(6)
})

test('a need above what there is, and hours below 0, are refused', () => {
  expect(() => parallelPlan({ jobs: [job('a', [1, { person: 2 }])], capacity: { person: 1 } })).toThrow(
    'jobs.0.stretches.0.needs.person is 2, expected at least 0 and at most 1',
  )
  expect(() => parallelPlan({ jobs: [job('a', [-1])], capacity: {} })).toThrow('hours is -1')
  expect(() => parallelPlan({ jobs: [], capacity: {} })).toThrow('jobs is 0')
})

test('whatever the jobs, nothing is taken twice, each job keeps its order, and the end lies above the bound', () => {
  const needs = fc.constantFrom<Record<string, number>>({}, { p: 1 }, { q: 1 }, { p: 1, q: 1 })
  const stretch = fc.tuple(fc.integer({ min: 0, max: 5 }), needs)
  const jobs = fc.array(fc.array(stretch, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 })
  fc.assert(
    fc.property(jobs, (drawn) => {
      const asked = drawn.map((stretches, i) => job(`${i}`, ...stretches))
      const plan = parallelPlan({ jobs: asked, capacity: { p: 1, q: 1 }, most: 200 })
      expect(plan.finish).toBeGreaterThanOrEqual(plan.lowerBound - 1e-9)
      for (const { stretches } of plan.jobs) {
        for (const [i, { start }] of stretches.entries())
          expect(start).toBeGreaterThanOrEqual(stretches[i - 1]?.finish ?? 0)
      }
      for (const thing of ['p', 'q']) {
        const taken = plan.jobs
          .flatMap(({ stretches }, j) => stretches.filter((_, s) => asked[j]!.stretches[s]!.needs[thing] === 1))
          .filter(({ start, finish }) => finish > start)
          .sort((a, b) => a.start - b.start)
        for (const [i, { start }] of taken.entries()) expect(start).toBeGreaterThanOrEqual(taken[i - 1]?.finish ?? 0)
      }
    }),
    { numRuns: 60 },
  )
})
