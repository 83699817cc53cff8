import type { PeopleParts } from './people-parts.ts'
import { wrongCode } from './refusals.ts'
import { digest, newCode, plainCode } from './secrets.ts'

const hour = 3_600_000
/** How long a code lets somebody in. */
export const codeLasts = { 'first-run': hour, join: 7 * 24 * hour } as const

export type Codes = ReturnType<typeof keepCodes>

/** Codes that let somebody in once: the first owner, or who was invited. */
export function keepCodes({ db, now, after }: PeopleParts) {
  return {
    /** A new code, shown this once; an older one of the same person is gone. */
    async make(purpose: keyof typeof codeLasts, person: string | null) {
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
    },

    /** @throws {BookError} `wrong-credentials`: no code, or one that was used or is too old */
    async look(purpose: keyof typeof codeLasts, code: string) {
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
    },

    /** In one statement, so that of two who type it at once one gets in. */
    async use(hash: string): Promise<void> {
      const used = await db
        .updateTable('person_code')
        .set({ used_at: now() })
        .where('hash', '=', hash)
        .where('used_at', 'is', null)
        .returning('hash')
        .executeTakeFirst()
      if (used === undefined) throw wrongCode()
    },
  }
}
