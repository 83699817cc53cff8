import { randomUUID } from 'node:crypto'
import { BookError, type TokenRow } from '@sumpbook/book'
import { type Accounts, personOf } from './accounts.ts'
import type { Identity, Person, TokenHolder } from './identity.ts'
import type { PeopleParts } from './people-parts.ts'
import { isRole, lesser, type Role, type Scope, scopes } from './roles.ts'
import { digest, newToken } from './secrets.ts'

/** A token or a device as it is listed: never the secret itself. */
export interface TokenLine extends TokenHolder {
  person: string | null
  role: Role
  scopes: Scope[]
  madeAt: string
  expiresAt: string | null
  usedAt: string | null
}

interface NewToken {
  kind: TokenHolder['kind']
  name: string
  person: string | null
  role: Role
  scopes: readonly Scope[]
  madeBy: string | null
  expires: string | null
}

const hour = 3_600_000
const day = 24 * hour
const deviceLasts = 2 * 365 * day

export type Tokens = ReturnType<typeof keepTokens>

/** What lets in without a password: tokens of programs, phones that stay signed in, shared tablets. */
export function keepTokens({ db, clock, now, after, isPast }: PeopleParts, { rowOf }: Pick<Accounts, 'rowOf'>) {
  async function make(made: NewToken): Promise<{ id: string; token: string }> {
    const [id, token] = [randomUUID(), newToken()]
    await db
      .insertInto('person_token')
      .values({
        id,
        hash: digest(token),
        kind: made.kind,
        name: made.name.trim(),
        person: made.person,
        role: made.role,
        scopes: made.scopes.join(' '),
        acting: null,
        acting_until: null,
        made_at: now(),
        made_by: made.madeBy,
        expires_at: made.expires,
        used_at: null,
        ended_at: null,
      })
      .execute()
    return { id, token }
  }

  /** How many would be written if each use were noted. */
  const noteUse = async ({ id, used_at: usedAt }: TokenRow) => {
    if (usedAt !== null && Date.parse(usedAt) >= clock().getTime() - hour) return
    await db.updateTable('person_token').set({ used_at: now() }).where('id', '=', id).execute()
  }

  const open = () => db.selectFrom('person_token').selectAll().where('ended_at', 'is', null).orderBy('made_at')
  const lines = (rows: readonly TokenRow[]) => rows.filter((row) => !isPast(row.expires_at)).map(tokenLine)

  return {
    tokensOf: async (person: string): Promise<TokenLine[]> =>
      lines(await open().where('person', '=', person).execute()),
    /** Phones and shared tablets of everybody. */
    devices: async (): Promise<TokenLine[]> => lines(await open().where('kind', '!=', 'personal').execute()),
    async deviceName(id: string): Promise<string | null> {
      const row = await db.selectFrom('person_token').select('name').where('id', '=', id).executeTakeFirst()
      return row?.name ?? null
    },

    makePersonalToken: (person: Person, made: { name: string; scopes: readonly Scope[]; days: number }) =>
      make({
        ...made,
        kind: 'personal',
        person: person.id,
        role: person.role,
        madeBy: person.id,
        expires: after(made.days * day),
      }),
    /** A phone of somebody's own: it writes and reads as they do, for long. */
    makeDevice: (person: Person, name: string) =>
      make({
        kind: 'device',
        name,
        person: person.id,
        role: lesser(person.role, 'keeper'),
        scopes: ['read', 'write'],
        madeBy: person.id,
        expires: after(deviceLasts),
      }),
    /** A tablet that many use: it writes nothing until somebody has said who they are. */
    makeSharedDevice: (made: { name: string; role: Role; madeBy: string | null }) =>
      make({ ...made, kind: 'shared', person: null, scopes: ['read', 'write'], expires: after(deviceLasts) }),

    /** @throws {BookError} `not-found` */
    async endToken(where: { id: string; person?: string }): Promise<void> {
      let update = db.updateTable('person_token').set({ ended_at: now(), acting: null }).where('id', '=', where.id)
      if (where.person !== undefined) update = update.where('person', '=', where.person)
      const ended = await update.where('ended_at', 'is', null).returning('id').executeTakeFirst()
      if (ended === undefined) throw new BookError('not-found', `There is no token or device ${where.id} here.`)
    },

    /** Who a token belongs to; null where it is none, or ended. */
    async byToken(token: string): Promise<Identity | null> {
      const row = await db.selectFrom('person_token').selectAll().where('hash', '=', digest(token)).executeTakeFirst()
      if (row === undefined || row.ended_at !== null || isPast(row.expires_at)) return null
      await noteUse(row)
      const { id, kind, name, role, scopes: allowed, person: owner } = tokenLine(row)
      const acting = row.acting !== null && !isPast(row.acting_until) ? row.acting : null
      const who = kind === 'shared' ? acting : owner
      const person = who === null ? null : personOf(await rowOf(who))
      return {
        by: 'token',
        person,
        role: person?.closedAt == null ? lesser(role, person?.role ?? 'reader') : null,
        scopes: allowed,
        token: { id, kind, name },
        session: null,
      }
    },
  }
}

function tokenLine(row: TokenRow): TokenLine {
  const { id, name, person, made_at: madeAt, expires_at: expiresAt, used_at: usedAt } = row
  return {
    id,
    kind: row.kind as TokenHolder['kind'],
    name,
    person,
    role: isRole(row.role) ? row.role : 'reader',
    scopes: scopes.filter((scope) => row.scopes.split(' ').includes(scope)),
    madeAt,
    expiresAt,
    usedAt,
  }
}
