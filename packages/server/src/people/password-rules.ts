import type { Fault } from '@sumpbook/book'
import { isCommonPassword } from './most-used-passwords.ts'

export const shortestPassword = 10
export const longestPassword = 128

/** Whose password it is to be: what everybody around knows of them must not be in it. */
export interface Chooser {
  /** As it stands beside their entries. */
  name: string | null
  /** What they sign in with. */
  login: string | null
}

/** A name of fewer signs may be part of any word. */
const shortestName = 3

/**
 * What is wrong with a password that somebody chooses; null where it will do. Its length counts and that others do not guess it first: no
 * signs of some kind are asked for, and it is neither cut nor changed.
 *
 * Source: OWASP ASVS 5.0.0, 6.2.1, 6.2.4, 6.2.5, 6.2.9, 6.2.11.
 *
 * @param pointer the field it was given in
 */
export async function passwordFault(
  password: string,
  { name, login }: Chooser,
  pointer: string,
): Promise<Fault | null> {
  const fault = (found: string, expected: string): Fault => ({ pointer, found, expected })
  if (password.length < shortestPassword) {
    return fault(`${password.length} characters`, `at least ${shortestPassword}: a few words are easy to remember`)
  }
  if (password.length > longestPassword) return fault(`${password.length} characters`, `at most ${longestPassword}`)
  if (new Set(password).size < 4) return fault('the same few characters', 'more than three different ones')
  const plain = password.toLowerCase()
  if (plain.includes('sumpbook')) return fault('the name of the program', 'a password without it')
  if (namesOf({ name, login }).some((part) => plain.includes(part))) {
    return fault('your own name', 'a password without it')
  }
  if (await isCommonPassword(password)) {
    return fault('a password that many people use', 'one that nobody guesses, such as a few words of your own')
  }
  return null
}

/** The name to sign in with, without the part of a mail address that many share, and each part of the name itself. */
function namesOf({ name, login }: Chooser): string[] {
  const [own = ''] = (login ?? '').split('@')
  const parts = [own, ...(name ?? '').split(/[^\p{L}\p{N}]+/u)]
  return parts.map((part) => part.trim().toLowerCase()).filter((part) => part.length >= shortestName)
}
