import { readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { isCommonPassword } from './most-used-passwords.ts'
import { passwordFault } from './password-rules.ts'

const nobodyElse = { name: 'Ada Owner', login: 'ada' }
const foundWith = async (password: string, chooser = nobodyElse) =>
  (await passwordFault(password, chooser, '/password'))?.found ?? null

test.each([
  ['nine characters', 'nine char', '9 characters'],
  ['one of ten', 'ten chars.', null],
  ['one of 128', `${'abcd'.repeat(31)}efgh`, null],
  ['one of 129', `${'abcd'.repeat(31)}efghi`, '129 characters'],
  ['three different signs', 'abcabcabcabc', 'the same few characters'],
  ['four different signs', 'abcdabcdabdc', null],
  ['the program’s name', 'my SumpBook 7', 'the name of the program'],
  ['the name one signs in with', 'ADA-went-home', 'your own name'],
  ['a part of one’s name', 'this owner swims', 'your own name'],
  ['words that do not go together', 'slow grey heron 7', null],
  ['letters of any alphabet', 'медленная цапля', null],
])('a password of %s', async (_, password, found) => {
  expect(await foundWith(password)).toBe(found)
})

test('a mail address is a name up to its @: many share the rest', async () => {
  const chooser = { name: 'Bo', login: 'b.berg@plant.example' }
  expect(await foundWith('b.berg drinks tea', chooser)).toBe('your own name')
  expect(await foundWith('plant.example tea', chooser)).toBe(null)
  expect(await foundWith('both of us drink', chooser)).toBe(null)
})

// The first twenty of at least ten characters in another count, that of npm's @zxcvbn-ts/language-common 4.1.3 (MIT), src/passwords.json.
const usedMost =
  `qwertyuiop 1234567890 q1w2e3r4t5 1q2w3e4r5t 4815162342 123456789a 12345qwert 1234554321 usuckballz1 password123 123456789q basketball 1029384756
  123qweasdzxc soso123aljg manchester 1qaz2wsx3edc 12345678910 q1w2e3r4t5y6 1123581321`
    .trim()
    .split(/\s+/)

test.each(usedMost)('%s is refused', async (password) => {
  expect(await foundWith(password)).toBe('a password that many people use')
})

test('capitals, digits and signs before and behind make a common word no better', async () => {
  for (const password of ['QWERTYuiop', 'Sunshine2024!', '1!basketball!1', 'Manchester1', '77password77']) {
    expect([password, await isCommonPassword(password)]).toEqual([password, true])
  }
  for (const password of ['sunshine on basketball', '2024-11-25-17', '!?!?!?!?:;:;']) {
    expect([password, await isCommonPassword(password)]).toEqual([password, false])
  }
})

test('at least three thousand of those refused are as long as a password must be', () => {
  const packed = readFileSync(new URL('./most-used-passwords.txt.gz', import.meta.url))
  const listed = gunzipSync(packed).toString('utf8').trim().split('\n')
  expect(new Set(listed).size).toBe(listed.length)
  expect(listed.filter((password) => password.length >= 10).length).toBeGreaterThanOrEqual(3000)
  expect(listed.filter((password) => password !== password.toLowerCase())).toEqual([])
})
