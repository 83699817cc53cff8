import type { Store } from '@sumpbook/book'
import { keepAccounts } from './accounts.ts'
import { keepCodes } from './codes.ts'
import { letPeopleIn } from './coming-in.ts'
import { keepPasswords } from './passwords.ts'
import { type PeopleSettings, peopleParts } from './people-parts.ts'
import { keepSessions } from './sessions.ts'
import { keepSwitching } from './switching.ts'
import { keepTokens } from './tokens.ts'

/** People, their codes, sessions, tokens and devices. Every method stands by itself: several servers may keep one book's people. */
export async function openPeople(store: Store, settings: PeopleSettings = {}) {
  const parts = await peopleParts(store, settings)
  const accounts = keepAccounts(parts)
  const sessions = keepSessions(parts)
  const passwords = keepPasswords(parts, accounts, sessions)
  const { person, hasOwner, isPerson, list, names, change } = accounts
  const { checkPassword, changePassword } = passwords
  return {
    now: parts.clock,
    tries: parts.tries,
    library: parts.library,
    providerName: settings.provider?.name ?? null,
    publicUrl: settings.publicUrl ?? null,
    ...{ person, hasOwner, isPerson, list, names, change },
    ...{ checkPassword, changePassword },
    ...letPeopleIn({ accounts, codes: keepCodes(parts), passwords, sessions }),
    ...sessions,
    ...keepTokens(parts, accounts),
    ...keepSwitching(parts, passwords),
  }
}

export type People = Awaited<ReturnType<typeof openPeople>>
