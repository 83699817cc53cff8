import { readFile } from 'node:fs/promises'
import { promisify } from 'node:util'
import { gunzip } from 'node:zlib'

const unpack = promisify(gunzip)
const list = new URL('./most-used-passwords.txt.gz', import.meta.url)

/**
 * Whether a password is one of those that are used most, however it is capitalised, or one of them with digits and signs before or behind
 * it. The list is read when somebody chooses a password and not kept: that is seldom.
 *
 * Source: the 10,000 most used of at least ten characters, and the 3,000 most used words of five to nine letters, of SecLists'
 * `10-million-password-list-top-1000000.txt` (`scripts/most-used-passwords.ts`; licence in `most-used-passwords.md`).
 *
 * @example isCommonPassword('Sunshine2024!') // true
 */
export async function isCommonPassword(password: string): Promise<boolean> {
  const common = new Set((await unpack(await readFile(list))).toString('utf8').split('\n'))
  const plain = password.toLowerCase()
  const core = plain.replace(/^[^\p{L}]+/u, '').replace(/[^\p{L}]+$/u, '')
  return common.has(plain) || (core !== '' && common.has(core))
}
