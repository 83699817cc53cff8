import { afterEach, beforeEach, expect, test } from 'vitest'
import { sayDiagnosis } from '../say/diagnosis.ts'
import { catalogue } from '../words/de.ts'
import { learn, speakAs } from '../words/index.ts'
import { diagnose } from './diagnose.ts'
import { sayFinding } from './finding-words.ts'

beforeEach(() => {
  learn('de', catalogue)
  speakAs(() => ({ language: 'de', numbers: 'de' }))
})
afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

const found = diagnose({ readings: {}, limits: {}, signs: ['rancid smell', 'emulsion split'] })

test('a diagnosis keeps its words, and is said in the language that is spoken when it is said', () => {
  const { causes, stop } = sayDiagnosis(found, { units: 'metric' })
  expect(causes.find(({ cause }) => cause === 'bacterial growth')).toMatchObject({
    name: 'Bakterienwachstum',
    says: 'Bakterien leben vom KSS: Sie säuern ihn, zehren die Inhibitoren auf und senken den pH-Wert.',
  })
  expect(stop[0]).toMatch(/^Mit gebrochener Emulsion nicht weiter zerspanen/)
  speakAs(() => ({ language: 'en', numbers: 'en' }))
  expect(sayDiagnosis(found, { units: 'metric' }).stop[0]).toMatch(/^Stop cutting with a split emulsion/)
})

test('a remedy that begins with cautions is said whole', () => {
  const growth = sayDiagnosis(found, { units: 'metric' }).causes.find(({ cause }) => cause === 'bacterial growth')!
  expect(growth.remedies[1]).toMatch(/Zuerst den Lieferanten fragen\.$/)
})

test('the word of a sign stays, what people read of it is theirs', () => {
  expect(sayFinding('rotten-egg smell')).toBe('Geruch nach faulen Eiern')
})
