import { expect, test } from 'vitest'
import { shortName } from './short-name.ts'
import { inLanguage, learn } from './speech.ts'

test('a sentence is found by its short name too', () => {
  learn('de', { [shortName('Neat concentrate')]: 'Reines Konzentrat' })
  expect(inLanguage('de', 'Neat concentrate')).toBe('Reines Konzentrat')
  expect(inLanguage('de', 'Neat concentrates')).toBe('Neat concentrates')
  learn('de', {})
})

test('short names are short and told apart', () => {
  const names = Array.from({ length: 2000 }, (_, i) => shortName(`{count} sumps of ${i} wait`))
  expect(new Set(names).size).toBe(names.length)
  for (const name of names) expect(name).toMatch(/^[0-9a-z]{1,6}$/)
})
