import { expect, test } from 'vitest'
import { nextChecks } from '../next-checks.ts'
import { signs } from '../signs.ts'
import { sources } from '../sources.ts'
import { stops } from '../stops.ts'
import { findings, tables } from '../tables.ts'
import { causes } from './index.ts'

test('there are at least twenty-five causes, each once, with what shows it, checks and remedies', () => {
  expect(causes.length).toBeGreaterThanOrEqual(25)
  expect(new Set(causes.map(({ id }) => id)).size).toBe(causes.length)
  for (const { id, shows, checks, remedies } of causes) {
    expect([id, shows.length >= 2, checks.length > 0, remedies.length > 0]).toEqual([id, true, true, true])
  }
})

test('every link names a finding of the tables once, and its source', () => {
  for (const { id, shows } of causes) {
    const names = shows.map(([finding]) => finding)
    expect([id, names.filter((name, n) => names.indexOf(name) !== n || !findings.includes(name))]).toEqual([id, []])
    expect(shows.filter(([, , source]) => !(source in sources))).toEqual([])
  }
  expect(tables.links.length).toBe(causes.length)
})

test('every sign can come from a cause, and every cause shows a sign or a reading that people can have', () => {
  const shown = new Set(causes.flatMap(({ shows }) => shows.map(([finding]) => finding)))
  expect(signs.filter(({ id }) => !shown.has(id)).map(({ id }) => id)).toEqual([])
})

test('stops and checks name findings of the tables', () => {
  const named = [...stops.flatMap(({ when }) => when), ...nextChecks.flatMap((check) => check.findings)]
  expect(named.filter((finding) => !findings.includes(finding))).toEqual([])
})

test('every sign of people calls for a stop that somebody answers for', () => {
  const people = signs.filter(({ family }) => family === 'people').map(({ id }) => id)
  expect(people.filter((id) => !stops.some(({ when, followUp }) => followUp && when.includes(id)))).toEqual([])
})
