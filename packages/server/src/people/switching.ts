import { BookError } from '@sumpbook/book'
import type { TokenHolder } from './identity.ts'
import type { Passwords } from './passwords.ts'
import type { PeopleParts } from './people-parts.ts'
import { notAllowed } from './refusals.ts'

/** A shift; then the next one says who they are again. */
const switchLasts = 10 * 3_600_000

export type Switching = ReturnType<typeof keepSwitching>

/** Who stands before a shared device, as they said by PIN. */
export function keepSwitching({ db, now, after, tries }: PeopleParts, { hashOf, isRight }: Passwords) {
  return {
    async setPin(person: string, pin: string | null): Promise<void> {
      const hash = pin === null ? null : await hashOf(pin)
      await db.updateTable('person').set({ pin: hash }).where('id', '=', person).execute()
    },
    /** Those who can say so. */
    withPin: (): Promise<{ id: string; name: string }[]> =>
      db
        .selectFrom('person')
        .select(['id', 'name'])
        .where('pin', 'is not', null)
        .where('closed_at', 'is', null)
        .orderBy('name')
        .execute(),

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
      const isOpen = row !== undefined && row.closed_at === null
      if (!(isOpen && (await isRight(row.pin, pin)))) {
        throw new BookError('wrong-credentials', 'Person and PIN do not belong together.')
      }
      await tries.forget('pin', `${device.id} ${person}`)
      await tries.uncount('address', `pin ${device.id}`)
      await db
        .updateTable('person_token')
        .set({ acting: person, acting_until: after(switchLasts) })
        .where('id', '=', device.id)
        .execute()
      await db.insertInto('person_switch').values({ token: device.id, person, at: now() }).execute()
    },
    async leave(device: string): Promise<void> {
      await db.updateTable('person_token').set({ acting: null, acting_until: null }).where('id', '=', device).execute()
    },
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
  }
}
