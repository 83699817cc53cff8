import { speakAs } from '@sumpbook/fluid'
import { afterEach, expect, test } from 'vitest'
import { sayPicture, slidePictures } from './slide-pictures.ts'

afterEach(() => speakAs(() => ({ language: 'en', numbers: 'en' })))

test('the pictures of a slide rise by powers of ten', () => {
  expect(slidePictures.map(({ value }) => value)).toEqual([{ below: 1000 }, 1e3, 1e4, 1e5, 1e6, { atLeast: 1e7 }])
})

test('a picture is said with all its zeros', () => {
  expect(slidePictures.map(({ value }) => sayPicture(value))).toEqual([
    'fewer than the first picture',
    '1,000',
    '10,000',
    '100,000',
    '1,000,000',
    '10,000,000 or more',
  ])
})

test('its zeros are parted as the reader parts them', () => {
  speakAs(() => ({ language: 'en', numbers: 'de-DE' }))
  expect(sayPicture(1e6)).toBe('1.000.000')
})
