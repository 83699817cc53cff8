import { expect, test } from 'vitest'
import { evidenceOf, type Symptoms } from './evidence.ts'

const limits: Symptoms['limits'] = {
  concentration: { low: 6, target: 8, high: 10 },
  ph: { low: 8.5, high: 9.5 },
  volume: { low: 180, high: 210 },
}
const of = (given: Partial<Symptoms>) => evidenceOf({ readings: {}, limits, signs: [], ...given })
const present = (given: Partial<Symptoms>) =>
  of(given)
    .evidence.filter((one) => one.present)
    .map(({ finding }) => finding)
const absent = (given: Partial<Symptoms>) =>
  of(given)
    .evidence.filter((one) => !one.present)
    .map(({ finding }) => finding)

test('a reading beyond its limit is there, one inside was looked for in vain', () => {
  expect(present({ readings: { ph: 8.4 } })).toEqual(['low pH'])
  expect(absent({ readings: { ph: 8.5 } })).toEqual(['low pH', 'high pH'])
})

test.each([
  ['low and rich', 170, 8.9],
  ['low and right', 170, 8.8],
  ['low and right', 170, 7.2],
  ['low and weak', 170, 7.1],
  ['high and weak', 220, 5],
  ['high and rich', 220, 9],
])('%s: %d L at %d percent, target 8, mark about 195', (finding, volume, concentration) => {
  expect(present({ readings: { volume, concentration } })).toContain(finding)
})

test('a full sump of the right strength, or one whose level is in order, says nothing of both together', () => {
  expect(present({ readings: { volume: 220, concentration: 8 } })).toEqual(['level high'])
  expect(present({ readings: { volume: 195, concentration: 8 } })).toEqual([])
})

test.each([
  [9.0, 8.5, false],
  [9.1, 8.5, true],
])('from a pH of %d to %d: falling is %s', (from, ph, falls) => {
  expect(present({ readings: { ph }, previous: { ph: from } }).includes('falling pH')).toBe(falls)
})

test('where two methods disagree both are named, and the lower one is judged', () => {
  expect(present({ readings: { concentration: 8, titration: 5 } })).toEqual(['weak', 'refractometer above titration'])
  expect(present({ readings: { concentration: 8, titration: 11 } })).toEqual(['titration above refractometer'])
  expect(present({ readings: { concentration: 8, titration: 7 } })).toEqual([])
})

test('°Brix becomes percent by the factor; without one it is not judged', () => {
  expect(present({ readings: { brix: 3 }, brixFactor: 1.6 })).toEqual(['weak'])
  expect(of({ readings: { brix: 3 } })).toEqual({ evidence: [], unjudged: ['brix'] })
})

test('a reading without a limit is named and not judged', () => {
  expect(of({ readings: { hardness: 900 } })).toEqual({ evidence: [], unjudged: ['hardness'] })
})

test('rust at a strength that reads right points beside the strength', () => {
  const yet = 'rust though the reading is right'
  expect(present({ signs: ['rust on parts'], readings: { concentration: 8 } })).toContain(yet)
  expect(present({ signs: ['rust on parts'], readings: { concentration: 5 } })).not.toContain(yet)
  expect(present({ signs: ['rust on parts'] })).toEqual(['rust on parts'])
})

test('a count between clear and high says nothing', () => {
  const germs = { limits: { bacteria: { clear: 1e4, high: 1e6 } } }
  expect(of({ ...germs, readings: { bacteria: { low: 1e4, high: 1e5 } } }).evidence).toEqual([])
  expect(absent({ ...germs, readings: { bacteria: { below: 1e4 } } })).toEqual(['bacteria high'])
  expect(present({ ...germs, readings: { bacteria: { atLeast: 1e6 } } })).toEqual(['bacteria high'])
})

test('a sign that is seen is there, whatever a reading says', () => {
  expect(present({ signs: ['level low'], readings: { volume: 200 } })).toEqual(['level low'])
  expect(absent({ signs: ['foam'], absent: ['foam', 'slime'] })).toEqual(['slime'])
})
