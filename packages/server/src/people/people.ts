import { randomBytes, randomUUID } from 'node:crypto'
import { BookError, type PeopleDoor, type PersonRow, type Store, type TokenRow } from '@sumpbook/book'
import type { Identity, Person, TokenHolder } from './identity.ts'
import type { Library, Provider } from './library.ts'
import { addressOf, addressOfInvited, checkChosen, loginOf } from './names.ts'
import { notAllowed, signInNeeded, wrongCode, wrongCredentials } from './refusals.ts'
import { isRole, lesser, type Role, type Scope, scopes } from './roles.ts'
import { digest, newCode, newToken, plainCode } from './secrets.ts'
import { countTries, type Tries } from './tries.ts'

/** What the keeping of people depends on. */
export interface PeopleSettings {
  clock?: () => Date
  /** Signs cookies; without it one is made and kept in the book's database. */
  secret?: string | null
  /** Where people reach the book, as `https://book.example`. */
  publicUrl?: string | null
  provider?: Provider | null
}

/** A person as owners see them. */
export interface Account extends Person {
  /** What they sign in with; null while they have not come yet. */
  login: string | null
  secondFactor: boolean
  hasPin: boolean
}

/** A token or a device as it is listed: never the secret itself. */
export interface TokenLine extends TokenHolder {
  person: string | null
  role: Role
  scopes: Scope[]
  madeAt: string
  expiresAt: string | null
  usedAt: string | null
}

export interface SessionLine {
  id: string
  since: string
  lastSeen: string
  expires: string
  address: string | null
  browser: string | null
}

const minute = 60_000
const hour = 60 * minute
const day = 24 * hour
/** How long a code lets somebody in. */
export const codeLasts = { 'first-run': hour, join: 7 * day } as const
const deviceLasts = 2 * 365 * day
/** A shift; then the next one says who they are again. */
const switchLasts = 10 * hour
/** What a phone could not deliver before its person left is still taken this long, and held. */
export const lateEntriesTaken = 30 * day

/** People, their codes, sessions, tokens and devices. Every method stands by itself: several servers may keep one book's people. */
export async function openPeople(store: Store, settings: PeopleSettings = {}) {
  const { clock = () => new Date(), publicUrl = null, provider = null } = settings
  const door = await store.people()
  const { db } = door
  const tries = countTries(door, clock)
  const now = () => clock().toISOString()
  const after = (ms: number) => new Date(clock().getTime() + ms).toISOString()

  let opening: Promise<Library> | null = null
  /** Loaded by who first needs it: a book that needs no accounts starts without. */
  const library = () => {
    opening ??= Promise.all([import('./library.ts'), settings.secret ?? keptSecret(door)]).then(
      ([{ openLibrary }, secret]) => openLibrary({ door, secret, publicUrl, provider }),
    )
    return opening
  }

  const rowOf = async (id: string): Promise<PersonRow> => {
    const row = await db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirst()
    if (row === undefined) throw new BookError('not-found', `There is no person ${id} here.`)
    return row
  }
  const hasOwner = async () =>
    (await db
      .selectFrom('person')
      .select('id')
      .where('role', '=', 'owner')
      .where('closed_at', 'is', null)
      .executeTakeFirst()) !== undefined

  /** The book is never left without somebody who can let people in. */
  const keepAnOwner = async (id: string) => {
    const others = await db
      .selectFrom('person')
      .select('id')
      .where('role', '=', 'owner')
      .where('closed_at', 'is', null)
      .where('id', '!=', id)
      .where('email', 'not like', '%@invited.invalid')
      .executeTakeFirst()
    if (others === undefined) throw notAllowed('The last owner stays one: make somebody else an owner first.')
  }

  async function makeCode(purpose: keyof typeof codeLasts, person: string | null) {
    const code = newCode()
    const expires = after(codeLasts[purpose])
    let older = db.deleteFrom('person_code').where('purpose', '=', purpose)
    older = person === null ? older.where('expires_at', '<=', now()) : older.where('person', '=', person)
    await older.execute()
    await db
      .insertInto('person_code')
      .values({
        hash: digest(plainCode(code)),
        purpose,
        person,
        made_at: now(),
        expires_at: expires,
        used_at: null,
      })
      .execute()
    return { code, expires }
  }

  const openCode = async (purpose: keyof typeof codeLasts, code: string) => {
    const row = await db
      .selectFrom('person_code')
      .selectAll()
      .where('hash', '=', digest(plainCode(code)))
      .where('purpose', '=', purpose)
      .where('used_at', 'is', null)
      .where('expires_at', '>', now())
      .executeTakeFirst()
    if (row === undefined) throw wrongCode()
    return row
  }

  /** In one statement, so that of two who type it at once one gets in. */
  const useCode = async (hash: string) => {
    const used = await db
      .updateTable('person_code')
      .set({ used_at: now() })
      .where('hash', '=', hash)
      .where('used_at', 'is', null)
      .returning('hash')
      .executeTakeFirst()
    if (used === undefined) throw wrongCode()
  }

  async function addPerson({ name, role, address }: { name: string; role: Role; address?: string }): Promise<string> {
    const id = randomUUID()
    await db
      .insertInto('person')
      .values({
        id,
        name: name.trim(),
        email: address ?? addressOfInvited(id),
        // SQLite knows no truth values; a provider's address counts only where it is verified here too.
        emailVerified: door.kind === 'sqlite' ? 1 : true,
        image: null,
        createdAt: now(),
        updatedAt: now(),
        twoFactorEnabled: door.kind === 'sqlite' ? 0 : false,
        role,
        closed_at: null,
        pin: null,
      } as never)
      .execute()
    return id
  }

  const isTaken = async (address: string, id: string | null) => {
    const row = await db.selectFrom('person').select('id').where('email', '=', address).executeTakeFirst()
    return row !== undefined && row.id !== id
  }
  const refuseTaken = async (login: string, id: string | null) => {
    if (await isTaken(addressOf(login), id)) {
      throw new BookError('refused-input', 'Somebody else signs in with this name.', [
        { pointer: '/login', found: JSON.stringify(login), expected: 'a name that nobody else has' },
      ])
    }
  }

  async function setPassword(id: string, password: string): Promise<void> {
    const { $context } = await library()
    const context = await $context
    const hash = await context.password.hash(password)
    const account = await db
      .selectFrom('person_account')
      .select('id')
      .where('userId', '=', id)
      .where('providerId', '=', 'credential')
      .executeTakeFirst()
    if (account === undefined) {
      await context.internalAdapter.linkAccount({
        userId: id,
        providerId: 'credential',
        accountId: id,
        password: hash,
      })
    } else await db.updateTable('person_account').set({ password: hash }).where('id', '=', account.id).execute()
  }

  const endSessions = (person: string, but: string | null = null) =>
    db
      .deleteFrom('person_session')
      .where('userId', '=', person)
      .where('id', '!=', but ?? '')
      .execute()

  const endToken = async (where: { id: string; person?: string }) => {
    let update = db.updateTable('person_token').set({ ended_at: now(), acting: null }).where('id', '=', where.id)
    if (where.person !== undefined) update = update.where('person', '=', where.person)
    const ended = await update.where('ended_at', 'is', null).returning('id').executeTakeFirst()
    if (ended === undefined) throw new BookError('not-found', `There is no token or device ${where.id} here.`)
  }

  async function makeToken(made: {
    kind: TokenHolder['kind']
    name: string
    person: string | null
    role: Role
    scopes: readonly Scope[]
    madeBy: string | null
    expires: string | null
  }): Promise<{ id: string; token: string }> {
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

  const tokensOf = async (person: string | null): Promise<TokenLine[]> => {
    let select = db.selectFrom('person_token').selectAll().where('ended_at', 'is', null).orderBy('made_at')
    select = person === null ? select.where('kind', '!=', 'personal') : select.where('person', '=', person)
    return (await select.execute()).filter((row) => !isPast(row.expires_at)).map(tokenLine)
  }
  const isPast = (instant: string | null) => instant !== null && instant <= now()

  return {
    now: clock,
    tries: tries as Tries,
    library,
    hasOwner,
    providerName: provider?.name ?? null,
    publicUrl,

    /** A code for the first owner; null where there is one already. */
    firstRunCode: async () => ((await hasOwner()) ? null : makeCode('first-run', null)),

    async firstRun(chosen: { code: string; name: string; login: string; password: string }): Promise<void> {
      checkChosen(chosen)
      const { hash } = await openCode('first-run', chosen.code)
      if (await hasOwner()) throw wrongCode()
      await refuseTaken(chosen.login, null)
      await useCode(hash)
      const id = await addPerson({ name: chosen.name, role: 'owner', address: addressOf(chosen.login) })
      await setPassword(id, chosen.password)
    },

    /** Somebody comes in by a code: new here with a name and a password of their own, or back with a new password. */
    async join(chosen: { code: string; login: string; password: string }): Promise<void> {
      checkChosen(chosen)
      const { hash, person } = await openCode('join', chosen.code)
      const row = await rowOf(person!)
      if (row.closed_at !== null) throw wrongCode()
      await refuseTaken(chosen.login, row.id)
      await useCode(hash)
      await db
        .updateTable('person')
        .set({
          email: addressOf(chosen.login),
          twoFactorEnabled: (door.kind === 'sqlite' ? 0 : false) as never,
        })
        .where('id', '=', row.id)
        .execute()
      await dropSecondFactor(door, row.id)
      await setPassword(row.id, chosen.password)
      await endSessions(row.id)
    },

    async list(): Promise<Account[]> {
      const rows = await db.selectFrom('person').selectAll().orderBy('name').orderBy('id').execute()
      return rows.map(accountOf)
    },
    /** Names by id. */
    async names(): Promise<Map<string, string>> {
      const rows = await db.selectFrom('person').select(['id', 'name']).execute()
      return new Map(rows.map(({ id, name }) => [id, name]))
    },
    person: async (id: string) => accountOf(await rowOf(id)),

    /** Somebody new, with a code that is shown once. */
    async add({ name, role }: { name: string; role: Role }) {
      const id = await addPerson({ name, role })
      return { id, ...(await makeCode('join', id)) }
    },
    /** A new code for somebody who lost theirs, or their password. */
    async newCode(id: string) {
      const row = await rowOf(id)
      if (row.closed_at !== null) throw notAllowed(`The account of ${row.name} is closed: open it again first.`)
      return { id, ...(await makeCode('join', id)) }
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

    /** @throws {BookError} `wrong-credentials` */
    async checkPassword(id: string, password: string): Promise<void> {
      const context = await (await library()).$context
      const account = await db
        .selectFrom('person_account')
        .select('password')
        .where('userId', '=', id)
        .where('providerId', '=', 'credential')
        .executeTakeFirst()
      const hash = account?.password ?? null
      if (hash === null || !(await context.password.verify({ hash, password }))) throw wrongCredentials()
    },
    async changePassword(id: string, password: string, session: string | null): Promise<void> {
      checkChosen({ password })
      await setPassword(id, password)
      await endSessions(id, session)
    },

    async sessions(person: string): Promise<SessionLine[]> {
      const rows = await db
        .selectFrom('person_session')
        .selectAll()
        .where('userId', '=', person)
        .orderBy('createdAt')
        .execute()
      return rows
        .map((row) => ({
          id: row.id,
          since: instant(row.createdAt),
          lastSeen: instant(row.updatedAt),
          expires: instant(row.expiresAt),
          address: row.ipAddress === '' ? null : row.ipAddress,
          browser: row.userAgent === '' ? null : row.userAgent,
        }))
        .filter(({ expires }) => !isPast(expires))
    },
    async endSession(person: string, id: string): Promise<void> {
      const ended = await db
        .deleteFrom('person_session')
        .where('userId', '=', person)
        .where('id', '=', id)
        .returning('id')
        .executeTakeFirst()
      if (ended === undefined) throw new BookError('not-found', 'There is no such session.')
    },

    tokensOf,
    /** Phones and shared tablets of everybody. */
    devices: () => tokensOf(null),
    endToken,
    async makePersonalToken(person: Person, made: { name: string; scopes: readonly Scope[]; days: number }) {
      return makeToken({
        ...made,
        kind: 'personal',
        person: person.id,
        role: person.role,
        madeBy: person.id,
        expires: after(made.days * day),
      })
    },
    /** A phone of somebody's own: it writes and reads as they do, for long. */
    makeDevice: (person: Person, name: string) =>
      makeToken({
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
      makeToken({ ...made, kind: 'shared', person: null, scopes: ['read', 'write'], expires: after(deviceLasts) }),

    async setPin(person: string, pin: string | null): Promise<void> {
      const context = await (await library()).$context
      const hash = pin === null ? null : await context.password.hash(pin)
      await db.updateTable('person').set({ pin: hash }).where('id', '=', person).execute()
    },
    /** Those who can switch in on a shared device. */
    async withPin(): Promise<{ id: string; name: string }[]> {
      return db
        .selectFrom('person')
        .select(['id', 'name'])
        .where('pin', 'is not', null)
        .where('closed_at', 'is', null)
        .orderBy('name')
        .execute()
    },
    /**
     * Somebody says on a shared device who they are.
     *
     * @throws {BookError} `wrong-credentials`, `too-many-tries`
     */
    async switchTo(device: TokenHolder, person: string, pin: string): Promise<void> {
      if (device.kind !== 'shared') throw notAllowed('This is nobody’s shared device: sign in instead.')
      await tries.count('pin', `${device.id} ${person}`)
      await tries.count('address', `pin ${device.id}`)
      const row = await db.selectFrom('person').selectAll().where('id', '=', person).executeTakeFirst()
      const context = await (await library()).$context
      const hash = row?.pin ?? null
      const isRight =
        hash !== null && row?.closed_at === null && (await context.password.verify({ hash, password: pin }))
      if (!isRight) throw new BookError('wrong-credentials', 'Person and PIN do not belong together.')
      await tries.forget('pin', `${device.id} ${person}`)
      await tries.uncount('address', `pin ${device.id}`)
      await db
        .updateTable('person_token')
        .set({ acting: person, acting_until: after(switchLasts) })
        .where('id', '=', device.id)
        .execute()
      await db.insertInto('person_switch').values({ token: device.id, person, at: now() }).execute()
    },
    leave: (device: string) =>
      db.updateTable('person_token').set({ acting: null, acting_until: null }).where('id', '=', device).execute(),
    /** Whether somebody ever said on this device who they are. */
    async hasSwitched(device: string, person: string): Promise<boolean> {
      const row = await db
        .selectFrom('person_switch')
        .select('at')
        .where('token', '=', device)
        .where('person', '=', person)
        .executeTakeFirst()
      return row !== undefined
    },
    async deviceName(id: string): Promise<string | null> {
      const row = await db.selectFrom('person_token').select('name').where('id', '=', id).executeTakeFirst()
      return row?.name ?? null
    },
    async isPerson(id: string): Promise<boolean> {
      return (await db.selectFrom('person').select('id').where('id', '=', id).executeTakeFirst()) !== undefined
    },

    /** Who a token belongs to; null where it is none, or ended. */
    async byToken(token: string): Promise<Identity | null> {
      const row = await db.selectFrom('person_token').selectAll().where('hash', '=', digest(token)).executeTakeFirst()
      if (row === undefined || row.ended_at !== null || isPast(row.expires_at)) return null
      if (row.used_at === null || Date.parse(row.used_at) < clock().getTime() - hour) {
        await db.updateTable('person_token').set({ used_at: now() }).where('id', '=', row.id).execute()
      }
      const { id, kind, name, role, scopes: allowed, person: owner } = tokenLine(row)
      const acting = row.acting !== null && !isPast(row.acting_until) ? row.acting : null
      const who = kind === 'shared' ? acting : owner
      const person = who === null ? null : personOf(await rowOf(who))
      const holder: Role = person?.role ?? 'reader'
      return {
        by: 'token',
        person,
        role: person?.closedAt == null ? lesser(role, holder) : null,
        scopes: allowed,
        token: { id, kind, name },
        session: null,
      }
    },

    /** Who signed in, by the cookies of a request; null where nobody did. */
    async bySession(headers: Headers): Promise<Identity | null> {
      const found = await (await library()).api.getSession({ headers })
      if (found === null) return null
      const user = found.user as typeof found.user & { role: string; closed_at: string | null }
      const person: Person = {
        id: user.id,
        name: user.name,
        role: isRole(user.role) ? user.role : 'reader',
        closedAt: user.closed_at ?? null,
      }
      return {
        by: 'session',
        person,
        role: person.closedAt === null ? person.role : null,
        scopes: null,
        token: null,
        session: found.session.id,
      }
    },
  }
}

export type People = Awaited<ReturnType<typeof openPeople>>

/** @throws {BookError} `sign-in-needed` */
export function personIn({ person }: Identity): Person {
  if (person === null || person.closedAt !== null) throw signInNeeded()
  return person
}

async function keptSecret({ db }: PeopleDoor): Promise<string> {
  const name = 'cookies'
  await db
    .insertInto('person_secret')
    .values({ name, value: randomBytes(32).toString('base64url') })
    .onConflict((conflict) => conflict.column('name').doNothing())
    .execute()
  const { value } = await db
    .selectFrom('person_secret')
    .select('value')
    .where('name', '=', name)
    .executeTakeFirstOrThrow()
  return value
}

async function dropSecondFactor({ db }: PeopleDoor, person: string): Promise<void> {
  await db.deleteFrom('person_two_factor').where('userId', '=', person).execute()
}

const instant = (value: string | Date) => new Date(value).toISOString()

const personOf = ({ id, name, role, closed_at: closedAt }: PersonRow): Person => ({
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
