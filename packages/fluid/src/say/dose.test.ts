import { expect, test } from 'vitest'
import type { DoseAnswer } from '../dose/dose.ts'
import { type DoseContext, sayDose, sayDoseAmount, sayDoseFault, sayOverLabel } from './dose.ts'

const context: DoseContext = {
  units: 'metric',
  additive: { name: 'Biocide 3', kind: 'biocide', unit: 'mL', low: 1, label: 'label of 2025, table 2' },
  sump: 'Mill 3',
}
const dose: DoseAnswer = { outcome: 'dose', least: 200, most: 400, volume: 200, thinnest: 1.6, already: 0 }

test('a dose says its amounts, its label, its volume and what to mind', () => {
  const { headline, why, cautions } = sayDose(dose, context)
  expect(headline).toBe('200 mL to 400 mL of Biocide 3 into Mill 3, never more')
  expect(why).toBe('By its label (label of 2025, table 2), for 200 L: the least that Mill 3 is likely to hold.')
  for (const words of ['by its label', 'does not repair', 'endotoxin', 'One additive at a time', 'Guidance only']) {
    expect(cautions.join(' ')).toContain(words)
  }
})

test('a dose that may stay under the label’s least says so, and what went in already', () => {
  const { why } = sayDose({ ...dose, thinnest: 0.9, already: 120 }, context)
  expect(why).toContain('120 mL that went in already are taken off.')
  expect(why).toContain('may stay under the label’s least')
})

test.each<[DoseAnswer, string, string]>([
  [{ outcome: 'cause-first' }, 'No dose before the cause is known', 'pH has fallen'],
  [{ outcome: 'label-missing', missing: 'dose' }, 'No dose: the label is not in the book', 'Nothing is guessed.'],
  [{ outcome: 'label-missing', missing: 'interval' }, 'No dose: the label is not in the book', 'days between doses'],
  [{ outcome: 'nitrite-with-amines' }, 'No Biocide 3 into Mill 3', 'Nitrite and amines'],
  [{ outcome: 'volume-unknown' }, 'No dose: read the level first', 'for each litre'],
  [{ outcome: 'doubt' }, 'No dose while a record does not fit', 'Settle'],
  [{ outcome: 'too-soon', inDays: 2.2 }, 'No Biocide 3 now', 'again in 3 days.'],
  [{ outcome: 'used-up', already: 380, inDays: 1 }, 'No Biocide 3 now', '380 mL went in already'],
  [{ outcome: 'unmeasured', inDays: 18 }, 'No Biocide 3 now', 'again in 18 days.'],
])('%o is no dose, and says why', (answer, headline, why) => {
  const words = sayDose(answer, context)
  expect(words.headline).toBe(headline)
  expect(words.why).toContain(why)
  expect(words.cautions.at(-1)).toContain('Guidance only')
})

// 399.96 mL: the most is never said as 400. A US gallon has 128 fl oz, an imperial one 160; an ounce is 28.349523125 g.
test.each([
  [399.96, 'down', 'mL', 'metric', '399 mL'],
  [399.96, 'near', 'mL', 'metric', '400 mL'],
  [200.04, 'up', 'mL', 'metric', '201 mL'],
  [1234.9, 'down', 'mL', 'metric', '1.23 L'],
  [1500, 'near', 'g', 'metric', '1.5 kg'],
  [3785.411784, 'near', 'mL', 'us', '128 fl oz'],
  [4546.09, 'near', 'mL', 'imperial', '160 fl oz'],
  [28.349523125, 'near', 'g', 'us', '1 oz'],
  [0, 'near', 'mL', 'metric', '0 mL'],
] as const)('%f rounded %s as %s in %s units is %s', (amount, towards, unit, units, words) => {
  expect(sayDoseAmount(amount, unit, towards, { units })).toBe(words)
})

test('what went against a label is said with both figures', () => {
  expect(sayOverLabel({ kind: 'over-most', perLitre: 4.5, allowed: 2 }, 'mL', {})).toBe(
    '4.5 mL in each litre, where its label allows 2 mL',
  )
  expect(sayOverLabel({ kind: 'over-total', perLitre: 3.2, allowed: 3, days: 28 }, 'g', {})).toContain('within 28 days')
  expect(sayOverLabel({ kind: 'too-soon', daysBefore: 3.4, minimumDays: 7 }, 'mL', {})).toBe(
    '3 days after the dose before, where its label asks for 7',
  )
})

test('an amount outside its dose is refused with both ends', () => {
  expect(sayDoseFault(450, { least: 200, most: 400 }, 'mL', { units: 'metric' })).toBe(
    'Found 450 mL; by its label expected 200 mL to 400 mL, never more.',
  )
})
