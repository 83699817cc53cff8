import type { Migration, MigrationProvider } from 'kysely/migration'
import * as journal from './0001-journal.ts'
import * as seals from './0003-seals.ts'
import * as projections from './0004-projections.ts'
import * as people from './0005-people.ts'
import * as about from './0006-about.ts'
import * as kinds from './0007-kinds.ts'

/** Every step from an empty database to today's tables, in order. A step that has been released never changes. */
export const migrations: MigrationProvider = {
  getMigrations: async () =>
    ({
      '0001-journal': journal,
      '0003-seals': seals,
      '0004-projections': projections,
      '0005-people': people,
      '0006-about': about,
      '0007-kinds': kinds,
    }) as unknown as Record<string, Migration>,
}
