import { type Fault, refusal } from '@sumpbook/book'
import { shortestPassword } from './library.ts'

/** Addresses end so where a person signs in by a short name: the library wants an address, and this one reaches nobody. */
const here = '@people.invalid'

/** The address the library knows a person by. */
export const addressOf = (login: string): string => {
  const plain = login.trim().toLowerCase()
  return plain.includes('@') ? plain : plain + here
}

/** What a person types to sign in; null while they have not chosen it yet. */
export const loginOf = (address: string): string | null =>
  address.endsWith(notYet) ? null : address.endsWith(here) ? address.slice(0, -here.length) : address

const notYet = '@invited.invalid'
/** The address of somebody who was invited and has not come yet. */
export const addressOfInvited = (id: string): string => id + notYet

const shortName = /^[a-z0-9](?:[a-z0-9_-]|\.(?!\.)){0,38}[a-z0-9]$/
const mailAddress = /^[a-z0-9_+-]+(?:\.[a-z0-9_+-]+)*@[a-z0-9-]+(?:\.[a-z0-9-]+)+$/

/** @throws {BookError} `refused-input`: a name to sign in with or a password that will not do */
export function checkChosen({ login, password }: { login?: string; password: string }): void {
  const faults: Fault[] = []
  if (login !== undefined) {
    const plain = login.trim().toLowerCase()
    const isGood = plain.includes('@') ? mailAddress.test(plain) && !plain.endsWith('.invalid') : shortName.test(plain)
    if (!isGood) {
      faults.push({
        pointer: '/login',
        found: JSON.stringify(login.slice(0, 60)),
        expected: '2 to 40 letters a–z, digits, dots, hyphens, or a mail address',
      })
    }
  }
  const expected = passwordFault(password, login?.trim().toLowerCase() ?? '')
  if (expected !== null) faults.push({ pointer: '/password', found: 'another', expected })
  if (faults.length > 0) throw refusal(faults, 'account')
}

function passwordFault(password: string, login: string): string | null {
  if (password.length < shortestPassword) return `at least ${shortestPassword} characters`
  if (password.length > 128) return 'at most 128 characters'
  if (new Set(password).size < 4) return 'more than three different characters'
  const plain = password.toLowerCase()
  if (plain.includes('sumpbook') || (login.length > 2 && plain.includes(login))) {
    return 'neither the name of the program nor your own in it'
  }
  return null
}
