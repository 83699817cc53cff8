/** The stories of the estimate's page, held to the code: each with the probability it has there. */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { tellings } from '../packages/fluid/src/estimate/doubts/stories.ts'
import { publishedPriors } from '../packages/fluid/src/estimate/priors.ts'
import { pourOf } from '../packages/fluid/src/estimate/written-pour.ts'

test('the page has the stories and probabilities of the code, in its order', () => {
  const page = readFileSync(new URL('../docs/method/estimate.md', import.meta.url), 'utf8')
  const shown = [...page.matchAll(/^\| ([a-z-]+) +\| (0\.\d+) +\|/gm)].map(([, story, prior]) => [story, Number(prior)])
  const usual = pourOf({ strength: 5, water: { hardness: null, chloride: null } })
  const habits = {
    usual,
    plainWater: usual,
    target: 8,
    brim: 1.2,
    forgotten: 0,
    workSince: 1,
    idle: publishedPriors.idle,
  }
  expect(shown).toEqual(tellings(habits, 0.9).map(({ story, prior }) => [story, prior]))
})
