import { learn, speakAs } from '@sumpbook/fluid'
import { afterEach, expect, test } from 'vitest'
import why from '../words/de/why.json' with { type: 'json' }
import { saySeverity } from './severity.ts'

afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

test('how strong a sign is is said in the language that is spoken; what somebody wrote otherwise stands as written', () => {
  learn('de', why)
  speakAs(() => ({ language: 'de', numbers: 'de' }))
  expect([saySeverity('strong'), saySeverity('quite {strong}')]).toEqual(['stark', 'quite {strong}'])
})
