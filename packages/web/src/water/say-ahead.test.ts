import { learn, speakAs } from '@sumpbook/fluid'
import { afterEach, expect, test } from 'vitest'
import { catalogue as german } from '../words/de.ts'
import { catalogue as spanish } from '../words/es.ts'
import type { Future } from './build.ts'
import { sayCycles, sayFuture } from './say-ahead.ts'

afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

const book = { shop: { timeZone: 'Europe/Berlin' } } as Parameters<typeof sayFuture>[3]
const future = (more: Partial<Future>): Future => ({
  name: 'Tap',
  series: [],
  atLimit: null,
  left: null,
  steady: 800.4,
  ...more,
})

test('a future says when it meets its limit, when it leaves it, and where it ends', () => {
  const said = (more: Partial<Future>, limit: number | null = 600) => sayFuture(future(more), limit, 'hardness', book)
  expect(said({})).toBe('Tap: never at 600 ppm; it comes to rest near 800 ppm.')
  expect(said({}, null)).toBe('Tap: it comes to rest near 800 ppm.')
  expect(said({ steady: null, atLimit: 0 })).toBe('Tap: over 600 ppm today; it grows on without end.')
  expect(said({ atLimit: 0, left: 9 })).toMatch(
    /^Tap: over 600 ppm today, under it again from \w{3} \d+ \w+.* on; it comes/,
  )
  expect(said({ atLimit: 1.2 })).toMatch(/^Tap: at 600 ppm \w{3} \d+ \w+.*, in 1 day; it comes/)
  expect(said({ atLimit: 110 })).toMatch(/, in 110 days; it comes/)
})

test('in German and in Spanish the date stands where those languages put it', () => {
  learn('de', german)
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  expect(sayFuture(future({ atLimit: 1.2 }), 600, 'hardness', book)).toMatch(
    /^Tap: am \S+ \d+\. .* bei 600 ppm, in 1 Tag; pendelt sich bei etwa 800 ppm ein\.$/,
  )
  expect(sayCycles({ cycles: 4, topUpStrength: 2, strength: 0, futures: [] })).toBe(
    'Im Gleichgewicht ist der Inhalt 4,0-mal so mineralreich wie die Nachfüllungen. Nachfüllungen mit 2,0 % halten den Sollwert. Gerechnet mit reinem Wasser.',
  )
  learn('es', spanish)
  speakAs(() => ({ language: 'es', numbers: 'es-ES' }))
  expect(sayFuture(future({ atLimit: 110 }), 600, 'hardness', book)).toMatch(
    /^Tap: en 600 ppm el \S+ \d+ .*, en 110 días; se estabiliza cerca de 800 ppm\.$/,
  )
})
