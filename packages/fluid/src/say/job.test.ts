import { expect, test } from 'vitest'
import { type SaidJob, sayJob } from './job.ts'
import { sayParallel } from './parallel.ts'
import { saySheet } from './sheet-titles.ts'

const reader = { timeZone: 'UTC', now: '2026-03-02T08:00:00Z' }
const said = (more: Partial<SaidJob>) =>
  sayJob(
    {
      state: 'open',
      done: 2,
      steps: 12,
      next: 'Drain the old fluid',
      plannedAt: null,
      slideAt: null,
      verdict: null,
      ...more,
    },
    reader,
  )

test('a job says how far it is and what comes next', () => {
  expect(said({})).toBe('2 of 12 steps done; next: drain the old fluid.')
  expect(said({ state: 'planned' })).toBe('Planned, no day set.')
  expect(said({ state: 'planned', plannedAt: '2026-03-03T00:00:00Z' })).toBe('Planned: tomorrow.')
  expect(said({ state: 'waiting', slideAt: '2026-03-05T00:00:00Z' })).toBe('It waits for its later slide: on Thursday.')
  expect(said({ state: 'done' })).toBe('Done.')
  expect(said({ state: 'done', verdict: 'Growth is back.' })).toBe('Growth is back.')
  expect(said({ state: 'given-up' })).toBe('Given up after 2 of 12 steps.')
})

test('machines side by side say how good the plan is', () => {
  const plan = { jobs: [], finish: 9, downtime: 16, lowerBound: 8, exact: true }
  const two = [1, 2].map((id) => ({ id: `${id}`, start: 0, finish: 8, stretches: [] }))
  expect(sayParallel({ ...plan, jobs: two })).toBe(
    '2 machines are done after 9 h; together they stand for 16 h. No order ends earlier.',
  )
  expect(sayParallel({ ...plan, jobs: two, exact: false })).toContain('none ends before 8 h')
  expect(sayParallel({ ...plan, jobs: two.slice(1) })).not.toContain('order')
})

test('a sheet is called by what it is for and where', () => {
  expect(saySheet('cleanout', 'Mill 3')).toBe('Cleanout of Mill 3')
  expect(saySheet('restart', 'Mill 3')).toBe('Mill 3 back into use')
})
