import { expect, test } from 'vitest'
import { publishedPriors } from '../estimate/priors.ts'
import { sayLearnt } from './learnt.ts'

const learnt = {
  ...publishedPriors,
  version: 2,
  from: { sumps: 20, readings: 545, days: 112 },
  groups: {
    ...publishedPriors.groups,
    'stand-alone': {
      evaporation: { mean: Math.log(0.0203), sd: 0.3 },
      carryOff: { mean: Math.log(0.0078), sd: 0.4 },
    },
  },
  brixNoise: { fixed: 0.08, share: 0.01 },
}

test('what was learnt is said with how much it was learnt from', () => {
  expect(sayLearnt(learnt, {})).toBe(
    'Learnt from 20 sumps and 545 readings over 112 days: stand-alone sumps lose 2.0 % of their fill to the air on a working day ' +
      'and 0.8 % with what is carried off; a refractometer reads to 0.08 °Brix here.',
  )
})

test('one of each is one', () => {
  const little = { ...learnt, from: { sumps: 1, readings: 1, days: 1 } }
  expect(sayLearnt(little, {})).toContain('from 1 sump and 1 reading over 1 day')
})

test('before anything is learnt common practice is named', () => {
  expect(sayLearnt(publishedPriors, {})).toContain('common practice')
})
