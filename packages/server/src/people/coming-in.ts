import type { Accounts } from './accounts.ts'
import type { Codes } from './codes.ts'
import { addressOf, loginFault } from './names.ts'
import { passwordFault } from './password-rules.ts'
import type { Passwords } from './passwords.ts'
import { notAllowed, refuseFaults, wrongCode } from './refusals.ts'
import type { Role } from './roles.ts'
import type { Sessions } from './sessions.ts'

interface Parts {
  accounts: Accounts
  codes: Codes
  passwords: Passwords
  sessions: Sessions
}

/** What somebody chooses who comes in by a code. */
interface Chosen {
  code: string
  login: string
  password: string
}

/** How people come to have an account: the first owner by the code the server printed, everybody else by an invitation. */
export function letPeopleIn({ accounts, codes, passwords, sessions }: Parts) {
  const check = async (name: string, { login, password }: Chosen) =>
    refuseFaults(loginFault(login), await passwordFault(password, { name, login }, '/password'))

  return {
    /** A code for the first owner; null where there is one already. */
    firstRunCode: async () => ((await accounts.hasOwner()) ? null : codes.make('first-run', null)),

    async firstRun({ name, ...chosen }: Chosen & { name: string }): Promise<void> {
      await check(name, chosen)
      const { hash } = await codes.look('first-run', chosen.code)
      if (await accounts.hasOwner()) throw wrongCode()
      await accounts.refuseTaken(chosen.login, null)
      await codes.use(hash)
      const id = await accounts.insert({ name, role: 'owner', address: addressOf(chosen.login) })
      await passwords.setPassword(id, chosen.password)
    },

    /** Somebody new, with a code that is shown once. */
    async add({ name, role }: { name: string; role: Role }) {
      const id = await accounts.insert({ name, role })
      return { id, ...(await codes.make('join', id)) }
    },
    /** A new code for somebody who lost theirs, or their password. */
    async newCode(id: string) {
      const { name, closed_at: closedAt } = await accounts.rowOf(id)
      if (closedAt !== null) throw notAllowed(`The account of ${name} is closed: open it again first.`)
      return { id, ...(await codes.make('join', id)) }
    },

    /** Somebody comes in by a code: new here with a name and a password of their own, or back with a new password. */
    async join(chosen: Chosen): Promise<void> {
      const { hash, person } = await codes.look('join', chosen.code)
      const { id, name, closed_at: closedAt } = await accounts.rowOf(person!)
      if (closedAt !== null) throw wrongCode()
      await check(name, chosen)
      await accounts.refuseTaken(chosen.login, id)
      await codes.use(hash)
      await accounts.renew(id, chosen.login)
      await passwords.setPassword(id, chosen.password)
      await sessions.endSessions(id)
    },
  }
}
