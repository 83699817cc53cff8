import { expect, test } from 'vitest'
import type { TodayDue } from '../api/types.ts'
import type { JobLine } from '../cleanouts/asks.ts'
import { openAt } from './open-at.ts'

const job = (id: string, more: Partial<JobLine>) =>
  ({ id, sump: 'm7', state: 'open', sheet: 'cleanout', ...more }) as JobLine
const duty = (key: string, more: Partial<TodayDue>) => ({ key, sump: 'm7', kind: 'health', ...more }) as TodayDue

test('a sump is being cleaned out while a sheet of its charge is worked by, not while it waits for its slide', () => {
  expect(openAt('m7', [job('a', {})], []).isCleanedOut).toBe(true)
  expect(openAt('m7', [job('a', { sheet: 'change-over' })], []).isCleanedOut).toBe(true)
  expect(openAt('m7', [job('a', { state: 'waiting' })], [])).toEqual({ jobs: [], findings: [], isCleanedOut: false })
})

test('a sheet for a weekend is named, and holds back no pour', () => {
  const { jobs, isCleanedOut } = openAt('m7', [job('a', { sheet: 'weekend' })], [])
  expect(jobs.map(({ id }) => id)).toEqual(['a'])
  expect(isCleanedOut).toBe(false)
})

test('what is open at another sump is not named here', () => {
  const { jobs, findings } = openAt('m7', [job('a', { sump: 'l2' })], [duty('health:1', { sump: 'l2' })])
  expect([jobs, findings]).toEqual([[], []])
})

test('of what is due here, only findings that nobody answered for are named', () => {
  const { findings } = openAt('m7', [], [duty('health:1', {}), duty('upkeep:1', { kind: 'upkeep' })])
  expect(findings.map(({ key }) => key)).toEqual(['health:1'])
})
