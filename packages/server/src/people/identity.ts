import { signInNeeded } from './refusals.ts'
import type { Role, Scope } from './roles.ts'

/** A person as requests know them. */
export interface Person {
  id: string
  name: string
  role: Role
  /** Since when the account is closed. */
  closedAt: string | null
}

/** A device or a program that has a token. */
export interface TokenHolder {
  id: string
  kind: 'personal' | 'device' | 'shared'
  name: string
}

/** Who asks. */
export interface Identity {
  /** `machine`: somebody at the machine itself, where no accounts are needed; `session`: signed in; `token`: a program or a device. */
  by: 'machine' | 'session' | 'token' | 'nobody'
  person: Person | null
  /** What may be done at most; null: nothing. */
  role: Role | null
  /** What a token may be used for; null where there is no such bound. */
  scopes: readonly Scope[] | null
  token: TokenHolder | null
  /** The session's id. */
  session: string | null
}

export const nobody: Identity = { by: 'nobody', person: null, role: null, scopes: null, token: null, session: null }
/** Whoever sits at the machine owns the book's files anyway. */
export const machine: Identity = { ...nobody, by: 'machine', role: 'owner' }

/** @throws {BookError} `sign-in-needed` */
export function personIn({ person }: Identity): Person {
  if (person === null || person.closedAt !== null) throw signInNeeded()
  return person
}
