/** docs/security.md held to the tree, and what can be held of it by reading the sources. */
import { existsSync, globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const root = fileURLToPath(new URL('..', import.meta.url))
const page = readFileSync(join(root, 'docs/security.md'), 'utf8')
const listed = [...page.matchAll(/^\| (\d+\.\d+\.\d+) +\|/gm)].map(([, id]) => id!)

/** Every requirement of level 1 of OWASP ASVS 5.0.0. */
const levelOne =
  `1.2.1 1.2.2 1.2.3 1.2.4 1.2.5 1.3.1 1.3.2 1.5.1 2.1.1 2.2.1 2.2.2 2.3.1 3.2.1 3.2.2 3.3.1 3.4.1 3.4.2 3.5.1 3.5.2 3.5.3
  4.1.1 4.4.1 5.2.1 5.2.2 5.3.1 5.3.2 6.1.1 6.2.1 6.2.2 6.2.3 6.2.4 6.2.5 6.2.6 6.2.7 6.2.8 6.3.1 6.3.2 6.4.1 6.4.2 7.2.1 7.2.2 7.2.3 7.2.4 7.4.1 7.4.2
  8.1.1 8.2.1 8.2.2 8.3.1 9.1.1 9.1.2 9.1.3 9.2.1 10.4.1 10.4.2 10.4.3 10.4.4 10.4.5 11.3.1 11.3.2 11.4.1 12.1.1 12.2.1 12.2.2 13.4.1 14.2.1 14.3.1
  15.1.1 15.2.1 15.3.1`
    .trim()
    .split(/\s+/)

test('every requirement of level 1 is on the page, once', () => {
  expect(levelOne).toHaveLength(70)
  expect(levelOne.filter((id) => !listed.includes(id))).toEqual([])
  expect(listed.length).toBe(new Set(listed).size)
})

test('every file the page names is there, and every sentence it quotes is a test’s in that file', () => {
  const named = [...page.matchAll(/`((?:packages|tests|bench|scripts|docs)\/[^`]+)`(?:: ([^|;`]+))?/g)]
  expect(named.length).toBeGreaterThan(70)
  expect(named.map(([, file]) => file!).filter((file) => !existsSync(join(root, file)))).toEqual([])
  const quotes = named.filter(([, file, quote]) => quote !== undefined && file!.endsWith('.test.ts'))
  expect(quotes.length).toBeGreaterThan(10)
  const wrong = quotes.filter(([, file, quote]) => {
    const said = quote!.trim().replace(/[.,]?( \*\*.*| cookies are `SameSite.*)?$/, '')
    return !readFileSync(join(root, file!), 'utf8').includes(said)
  })
  expect(wrong.map(([whole]) => whole)).toEqual([])
})

const sources = globSync('{packages/*,demo}/src/**/*.{ts,tsx}', { cwd: root })
  .filter((file) => !/\.test\.tsx?$|testing\.ts$/.test(file))
  .map((file) => ({
    file,
    text: readFileSync(join(root, file), 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, ''),
  }))

test.each([
  ['code made of text', /\beval\(|new Function\(|\bsetTimeout\(\s*['"`]/],
  ['HTML made of text', /dangerouslySetInnerHTML|\.innerHTML\b|\.outerHTML\b|insertAdjacentHTML|document\.write\(/],
  ['expressions made of input', /new RegExp\((?!['"`/])/],
  ['hash functions that are broken', /createHash\(['"](md5|sha1)['"]\)|\bhash\(['"](md5|sha1)['"]/],
  ['processes', /from 'node:child_process'/],
  ['addresses of the network', /['"`]https?:\/\/(?!localhost|www\.w3\.org|json-schema\.org|[a-z.]*example\b|\$\{)/],
])('no %s in what runs', (_, pattern) => {
  expect(sources.length).toBeGreaterThan(200)
  expect(sources.filter(({ text }) => pattern.test(text)).map(({ file }) => file)).toEqual([])
})

test('the page’s pattern for broken things finds one', () => {
  expect(/createHash\(['"](md5|sha1)['"]\)/.test("createHash('md5')")).toBe(true)
  expect(/new RegExp\((?!['"`/])/.test('new RegExp(text)')).toBe(true)
})
