import { expect, test } from 'vitest'
import { readShifts } from './shop-form.tsx'

test.each([
  ['06:00', ['06:00']],
  ['14:00, 6:00; 22:00', ['06:00', '14:00', '22:00']],
  ['06:00 06:00', ['06:00']],
  ['', null],
  ['24:00', null],
  ['six', null],
])('"%s" is read as %s', (text, times) => {
  expect(readShifts(text)).toEqual(times)
})
