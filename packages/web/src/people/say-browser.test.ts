import { expect, test } from 'vitest'
import { sayBrowser } from './say-browser.ts'

// What browsers send: the examples of MDN, "User-Agent header" and "Browser detection using the user agent string"; Android and Edge from memory.
test.each([
  [
    'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/51.0.2704.103 Safari/537.36',
    'Chrome on Linux',
  ],
  ['Mozilla/5.0 (Windows NT 6.1; Win64; x64; rv:47.0) Gecko/20100101 Firefox/47.0', 'Firefox on Windows'],
  ['Mozilla/5.0 (Macintosh; Intel Mac OS X x.y; rv:42.0) Gecko/20100101 Firefox/42.0', 'Firefox on Mac'],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 13_5_1 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/13.1.1 Mobile/15E148 Safari/604.1',
    'Safari on iPhone',
  ],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/91.0.4472.124 Safari/537.36 Edg/91.0.864.59',
    'Edge on Windows',
  ],
  [
    'Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Mobile Safari/537.36',
    'Chrome on Android',
  ],
  ['curl/7.64.1', 'curl/7.64.1'],
])('%s', (said, words) => {
  expect(sayBrowser(said)).toBe(words)
})

test('who says nothing is a program', () => {
  expect(sayBrowser(null)).toBe('A program')
})
