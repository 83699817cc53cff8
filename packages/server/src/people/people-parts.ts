import { randomBytes } from 'node:crypto'
import type { PeopleDoor, Store } from '@sumpbook/book'
import type { Library } from './library.ts'
import type { Provider } from './provider.ts'
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

/** What every part of the keeping of people works with. */
export interface PeopleParts {
  door: PeopleDoor
  db: PeopleDoor['db']
  clock: () => Date
  /** The instant as the tables hold it. */
  now(): string
  /** So many milliseconds from now. */
  after(ms: number): string
  isPast(instant: string | null): boolean
  tries: Tries
  library(): Promise<Library>
}

export async function peopleParts(store: Store, settings: PeopleSettings): Promise<PeopleParts> {
  const { clock = () => new Date(), publicUrl = null, provider = null } = settings
  const door = await store.people()
  const now = () => clock().toISOString()
  let opening: Promise<Library> | null = null
  return {
    door,
    db: door.db,
    clock,
    now,
    after: (ms) => new Date(clock().getTime() + ms).toISOString(),
    isPast: (instant) => instant !== null && instant <= now(),
    tries: countTries(door, clock),
    /** Loaded by who first needs it: a book that needs no accounts starts without. */
    library: () => {
      opening ??= Promise.all([import('./library.ts'), settings.secret ?? keptSecret(door)]).then(
        ([{ openLibrary }, secret]) => openLibrary({ door, secret, publicUrl, provider }),
      )
      return opening
    },
  }
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
