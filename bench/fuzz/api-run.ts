// `node bench/fuzz/api-run.ts [--times 100000]`: random requests for every operation of the API's own description.
import { keepFigures, timesAsked } from '../record/keep-figures.ts'
import { fuzzApi } from './api.ts'

const { findings, ...report } = await fuzzApi({ seed: Date.now() % 2 ** 31, requests: timesAsked(100_000) })
keepFigures('fuzz, API', { ...report, findings }, findings.length === 0)
