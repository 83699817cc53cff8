/** A short run of what `node bench/fuzz/api-run.ts` does for long. */
import { expect, test } from 'vitest'
import { fuzzApi } from './api.ts'

test('whatever is asked of the API, the server does not break, and every refusal is a problem document', async () => {
  const report = await fuzzApi({ seed: 20261125, requests: 4000 })
  expect(report.findings).toEqual([])
  expect(report.operations).toBeGreaterThan(40)
  // Requests get through as well as not: what is only ever refused at the door is not tried.
  expect(report.statuses['200']).toBeGreaterThan(400)
  expect(report.statuses['422']).toBeGreaterThan(100)
}, 120_000)
