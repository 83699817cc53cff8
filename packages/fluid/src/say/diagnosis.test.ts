import { expect, test } from 'vitest'
import { diagnose } from '../diagnosis/diagnose.ts'
import { sayDiagnosis, sayRead } from './diagnosis.ts'

const reader = { units: 'metric' } as const
const say = (given: Partial<Parameters<typeof diagnose>[0]>, notUnderstood: string[] = []) =>
  sayDiagnosis(diagnose({ readings: {}, limits: {}, signs: [], ...given }), reader, { notUnderstood })

test('each cause says what speaks for it, by how often it goes with it, and what against', () => {
  const { causes } = say({
    signs: ['rancid smell', 'grey-black colour'],
    readings: { ph: 8.1, bacteria: { below: 1000 } },
    limits: { ph: { low: 8.5 }, bacteria: { high: 10_000 } },
  })
  expect(causes.find(({ cause }) => cause === 'bacterial growth')?.because).toEqual([
    'Often seen with it: rancid smell and pH 8.1 (under its limit of 8.5).',
    'Sometimes seen with it: grey-black colour.',
    'Against it: bacteria under 1000 CFU/mL (not above its limit of 10,000 CFU/mL).',
  ])
})

test('volumes are said in the reader’s unit', () => {
  expect(sayRead('volume', 37.85411784, { units: 'us' })).toBe('level 10 gal')
  expect(sayRead('hardness', { low: 250, high: 425 }, reader)).toBe('hardness 250–425 ppm')
  expect(sayRead('ph', { low: 8.5, high: 9 }, reader)).toBe('pH 8.5–9.0')
  expect(sayRead('bacteria', { atLeast: 1e6 }, reader)).toBe('bacteria 1,000,000 CFU/mL or more')
})

test('with nothing that speaks for a fault it says that this shows nothing', () => {
  const { causes, notes, stop } = say({ readings: { ph: 9 }, limits: { ph: { low: 8.5, high: 9.5 } } })
  expect({ causes, stop }).toEqual({ causes: [], stop: [] })
  expect(notes).toEqual(['Nothing of what was given speaks for a fault; that does not show that there is none.'])
})

test('what was not judged and what was not understood is named', () => {
  const { notes } = say({ signs: ['foam'], readings: { chloride: 90 } }, ['Tuesday'])
  expect(notes.join(' ')).toContain('hold it against: chloride')
  expect(notes.join(' ')).toContain('“Tuesday”')
})

test('a complaint is never answered with a good reading', () => {
  const { stop, cautions } = say({
    signs: ['cough or chest tightness'],
    readings: { bacteria: { below: 1000 } },
    limits: { bacteria: { high: 10_000 } },
  })
  expect(stop[0]).toContain('A low slide does not clear a fluid.')
  expect(stop[0]).toContain('occupational health')
  expect(cautions[0]).toContain('now, whatever its age or price')
})

test('while nobody may go near it, that is said in place of a test', () => {
  const { nextCheck, notes } = say({ signs: ['rotten-egg smell'] })
  expect(nextCheck).toBeNull()
  expect(notes[0]).toContain('No test at the sump')
})
