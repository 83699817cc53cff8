import type { Accounts } from './accounts.ts'
import { loginOf } from './names.ts'
import { passwordFault } from './password-rules.ts'
import type { PeopleParts } from './people-parts.ts'
import { refuseFaults, wrongCredentials } from './refusals.ts'
import type { Sessions } from './sessions.ts'

export type Passwords = ReturnType<typeof keepPasswords>

/** Passwords, and PINs by the same slow function: never kept themselves. */
export function keepPasswords(
  { db, library }: PeopleParts,
  { rowOf }: Pick<Accounts, 'rowOf'>,
  { endSessions }: Pick<Sessions, 'endSessions'>,
) {
  const ofPerson = (person: string) =>
    db.selectFrom('person_account').where('userId', '=', person).where('providerId', '=', 'credential')
  const slow = async () => (await (await library()).$context).password
  const hashOf = async (secret: string) => (await slow()).hash(secret)
  const isRight = async (hash: string | null, given: string) =>
    hash !== null && (await slow()).verify({ hash, password: given })

  /** Whatever it is: who calls has looked at it. */
  async function setPassword(person: string, password: string): Promise<void> {
    const hash = await hashOf(password)
    const account = await ofPerson(person).select('id').executeTakeFirst()
    if (account !== undefined) {
      await db.updateTable('person_account').set({ password: hash }).where('id', '=', account.id).execute()
      return
    }
    const { internalAdapter } = await (await library()).$context
    await internalAdapter.linkAccount({ userId: person, providerId: 'credential', accountId: person, password: hash })
  }

  return {
    hashOf,
    isRight,
    setPassword,
    /** @throws {BookError} `wrong-credentials` */
    async checkPassword(person: string, password: string): Promise<void> {
      const account = await ofPerson(person).select('password').executeTakeFirst()
      if (!(await isRight(account?.password ?? null, password))) throw wrongCredentials()
    },
    /**
     * Another password; every session but this one ends.
     *
     * @throws {BookError} `refused-input`
     */
    async changePassword(person: string, password: string, session: string | null): Promise<void> {
      const row = await rowOf(person)
      refuseFaults(await passwordFault(password, { name: row.name, login: loginOf(row.email) }, '/newPassword'))
      await setPassword(person, password)
      await endSessions(person, session)
    },
  }
}
