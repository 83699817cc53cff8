import { expect, test } from 'vitest'
import type { TodayDue } from '../api/types.ts'
import type { JobLine } from '../cleanouts/asks.ts'
import type { OpenAt } from './open-at.ts'
import { type OpenShown, openShown } from './open-shown.ts'
import type { Step } from './use-steps.ts'

const none: OpenAt = { jobs: [], findings: [], isCleanedOut: false }
const cleanout: OpenAt = { ...none, jobs: [{ id: 'j1' } as JobLine], isCleanedOut: true }
const rash: OpenAt = { ...none, findings: [{ key: 'health:1' } as TodayDue] }

/** What is shown after one thing after the other: where somebody is, and what the book says is open. */
const after = (...happened: [Step, OpenAt][]) =>
  happened.reduce<OpenShown | null>((before, [step, found]) => openShown(before, step, found), null)!

test('what is open when a stop is first drawn stands above its rows', () => {
  expect(after(['level', cleanout])).toMatchObject({ above: cleanout, below: { jobs: [], findings: [] } })
})

test.each([
  ['a sheet', cleanout],
  ['a finding', rash],
])('%s found late moves no row under a thumb: it comes below, and above from the next step on', (_, found) => {
  const { jobs, findings } = found
  const late = after(['signs', none], ['signs', found])
  expect(late).toMatchObject({ above: none, below: { jobs, findings } })
  expect(openShown(late, 'brix', found)).toMatchObject({ above: found, below: { jobs: [], findings: [] } })
})

test('a sheet that is signed elsewhere meanwhile goes with the step', () => {
  const signed = after(['signs', cleanout], ['signs', none])
  expect(signed.above).toEqual(cleanout)
  expect(openShown(signed, 'brix', none).above).toEqual(none)
})
