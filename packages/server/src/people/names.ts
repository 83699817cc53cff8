import type { Fault } from '@sumpbook/book'

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

/** What is wrong with a name to sign in with; null where it will do. */
export function loginFault(login: string): Fault | null {
  const plain = login.trim().toLowerCase()
  const isGood = plain.includes('@') ? mailAddress.test(plain) && !plain.endsWith('.invalid') : shortName.test(plain)
  if (isGood) return null
  return {
    pointer: '/login',
    found: JSON.stringify(login.slice(0, 60)),
    expected: '2 to 40 letters a–z, digits, dots, hyphens, or a mail address',
  }
}
