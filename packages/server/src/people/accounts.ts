import { randomUUID } from 'node:crypto'
import { BookError, type PersonRow } from '@sumpbook/book'
import type { Person } from './identity.ts'
import { addressOf, addressOfInvited, loginOf } from './names.ts'
import type { PeopleParts } from './people-parts.ts'
import { notAllowed } from './refusals.ts'
import { isRole, type Role } from './roles.ts'

/** A person as owners see them. */
export interface Account extends Person {
  /** What they sign in with; null while they have not come yet. */
  login: string | null
  secondFactor: boolean
  hasPin: boolean
}

export type Accounts = ReturnType<typeof keepAccounts>

/** Who there is, and in which role. */
export function keepAccounts({ door, db, now }: PeopleParts) {
  // SQLite knows no truth values.
  const [yes, no] = door.kind === 'sqlite' ? [1, 0] : [true, false]

  const rowOf = async (id: string): Promise<PersonRow> => {
    const row = await db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirst()
    if (row === undefined) throw new BookError('not-found', `There is no person ${id} here.`)
    return row
  }
  const openOwners = () => db.selectFrom('person').where('role', '=', 'owner').where('closed_at', 'is', null)

  /** The book is never left without somebody who can let people in. */
  const keepAnOwner = async (id: string) => {
    const others = await openOwners()
      .select('id')
      .where('id', '!=', id)
      .where('email', 'not like', '%@invited.invalid')
      .executeTakeFirst()
    if (others === undefined) throw notAllowed('The last owner stays one: make somebody else an owner first.')
  }

  return {
    /** @throws {BookError} `not-found` */
    rowOf,
    person: async (id: string) => accountOf(await rowOf(id)),
    hasOwner: async () => (await openOwners().select('id').executeTakeFirst()) !== undefined,
    isPerson: async (id: string) =>
      (await db.selectFrom('person').select('id').where('id', '=', id).executeTakeFirst()) !== undefined,
    list: async (): Promise<Account[]> =>
      (await db.selectFrom('person').selectAll().orderBy('name').orderBy('id').execute()).map(accountOf),
    /** Names by id. */
    names: async () => {
      const rows = await db.selectFrom('person').select(['id', 'name']).execute()
      return new Map(rows.map(({ id, name }) => [id, name]))
    },

    /** @throws {BookError} `refused-input`: somebody else signs in so */
    async refuseTaken(login: string, id: string | null): Promise<void> {
      const row = await db.selectFrom('person').select('id').where('email', '=', addressOf(login)).executeTakeFirst()
      if (row === undefined || row.id === id) return
      throw new BookError('refused-input', 'Somebody else signs in with this name.', [
        { pointer: '/login', found: JSON.stringify(login), expected: 'a name that nobody else has' },
      ])
    },

    /** @returns their id */
    async insert({ name, role, address }: { name: string; role: Role; address?: string }): Promise<string> {
      const id = randomUUID()
      await db
        .insertInto('person')
        .values({
          id,
          name: name.trim(),
          email: address ?? addressOfInvited(id),
          // A provider's address counts only where it is verified here too.
          emailVerified: yes,
          image: null,
          createdAt: now(),
          updatedAt: now(),
          twoFactorEnabled: no,
          role,
          closed_at: null,
          pin: null,
        } as never)
        .execute()
      return id
    },

    /** Somebody who comes anew: the name to sign in with is theirs, a second factor they may have had is gone. */
    async renew(id: string, login: string): Promise<void> {
      await db
        .updateTable('person')
        .set({ email: addressOf(login), twoFactorEnabled: no as never })
        .where('id', '=', id)
        .execute()
      await db.deleteFrom('person_two_factor').where('userId', '=', id).execute()
    },

    async change(id: string, { name, role, closed }: { name?: string; role?: Role; closed?: boolean }): Promise<void> {
      const row = await rowOf(id)
      const losesOwner =
        row.role === 'owner' && row.closed_at === null && ((role ?? 'owner') !== 'owner' || closed === true)
      if (losesOwner) await keepAnOwner(id)
      const closedAt = closed === undefined ? row.closed_at : closed ? (row.closed_at ?? now()) : null
      await db
        .updateTable('person')
        .set({ name: name?.trim() ?? row.name, role: role ?? row.role, closed_at: closedAt })
        .where('id', '=', id)
        .execute()
      if (closed === true) {
        await db.deleteFrom('person_code').where('person', '=', id).execute()
        await db.updateTable('person_token').set({ acting: null }).where('acting', '=', id).execute()
      }
    },
  }
}

export const personOf = ({ id, name, role, closed_at: closedAt }: PersonRow): Person => ({
  id,
  name,
  role: isRole(role) ? role : 'reader',
  closedAt,
})

const accountOf = (row: PersonRow): Account => ({
  ...personOf(row),
  login: loginOf(row.email),
  secondFactor: Boolean(row.twoFactorEnabled),
  hasPin: row.pin !== null,
})
