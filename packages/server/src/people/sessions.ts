import { BookError } from '@sumpbook/book'
import type { Identity, Person } from './identity.ts'
import type { PeopleParts } from './people-parts.ts'
import { isRole } from './roles.ts'

export interface SessionLine {
  id: string
  since: string
  lastSeen: string
  expires: string
  address: string | null
  browser: string | null
}

export type Sessions = ReturnType<typeof keepSessions>

/** Where people are signed in by their password. */
export function keepSessions({ db, isPast, library }: PeopleParts) {
  return {
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

    /** @throws {BookError} `not-found` */
    async endSession(person: string, id: string): Promise<void> {
      const ended = await db
        .deleteFrom('person_session')
        .where('userId', '=', person)
        .where('id', '=', id)
        .returning('id')
        .executeTakeFirst()
      if (ended === undefined) throw new BookError('not-found', 'There is no such session.')
    },

    async endSessions(person: string, but: string | null = null): Promise<void> {
      await db
        .deleteFrom('person_session')
        .where('userId', '=', person)
        .where('id', '!=', but ?? '')
        .execute()
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

const instant = (value: string | Date) => new Date(value).toISOString()
