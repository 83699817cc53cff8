import type { PeopleDoor } from '@sumpbook/book'
import { sql } from 'kysely'
import { TooManyTries } from './refusals.ts'

/** So many tries within so long, by one key. */
export interface Limit {
  most: number
  withinMs: number
}

const quarterOfAnHour = 15 * 60_000
/** Enough for clumsy fingers, far too few for guessing. */
export const limits = {
  address: { most: 40, withinMs: quarterOfAnHour },
  name: { most: 10, withinMs: quarterOfAnHour },
  code: { most: 10, withinMs: quarterOfAnHour },
  secondFactor: { most: 5, withinMs: quarterOfAnHour },
  pin: { most: 5, withinMs: quarterOfAnHour },
} as const satisfies Record<string, Limit>

/** Tries are counted in the database: all servers of a book count together, and a restart forgives nothing. */
export interface Tries {
  /** @throws {TooManyTries} */
  count(kind: keyof typeof limits, whose: string): Promise<void>
  /** This one try was right: a shop behind one address signs in all morning. */
  uncount(kind: keyof typeof limits, whose: string): Promise<void>
  /** Somebody got it right: what was counted before is forgotten. */
  forget(kind: keyof typeof limits, whose: string): Promise<void>
}

export function countTries({ db }: PeopleDoor, clock: () => Date): Tries {
  return {
    count: async (kind, whose) => {
      const { most, withinMs } = limits[kind]
      const now = clock()
      const edge = new Date(now.getTime() - withinMs).toISOString()
      const isOver = sql<boolean>`person_try.since <= ${edge}`
      const { count, since } = await db
        .insertInto('person_try')
        .values({ key: `${kind} ${whose}`, since: now.toISOString(), count: 1 })
        .onConflict((conflict) =>
          conflict.column('key').doUpdateSet({
            count: sql<number>`case when ${isOver} then 1 else person_try.count + 1 end`,
            since: sql<string>`case when ${isOver} then ${now.toISOString()} else person_try.since end`,
          }),
        )
        .returning(['count', 'since'])
        .executeTakeFirstOrThrow()
      if (count > most) throw new TooManyTries(Math.ceil((Date.parse(since) + withinMs - now.getTime()) / 1000))
    },
    uncount: async (kind, whose) => {
      await db
        .updateTable('person_try')
        .set({ count: sql<number>`count - 1` })
        .where('key', '=', `${kind} ${whose}`)
        .where('count', '>', 0)
        .execute()
    },
    forget: async (kind, whose) => {
      await db.deleteFrom('person_try').where('key', '=', `${kind} ${whose}`).execute()
    },
  }
}
