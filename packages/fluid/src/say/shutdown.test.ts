import { expect, test } from 'vitest'
import { shutdownSheet } from '../cleanout/shutdown.ts'
import { sayShutdownStep } from './shutdown.ts'

test('the figure in a step is written with the reader’s signs, whatever the language of the sentence', () => {
  const step = shutdownSheet('restart').find(({ id }) => id === 'readings')!
  expect(sayShutdownStep(step).text).toMatch(/^Strength, pH; a pH that has fallen by more than 0\.5 since before/)
  expect(sayShutdownStep(step, { locale: 'de-DE' }).text).toContain('more than 0,5 since')
  expect(sayShutdownStep({ title: 'Skim', text: 'Skim it.' })).toEqual({ title: 'Skim', text: 'Skim it.' })
})
