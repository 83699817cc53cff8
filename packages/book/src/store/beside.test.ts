import { DatabaseSync } from 'node:sqlite'
import { expect, test } from 'vitest'
import { backUp } from '../backup/back-up.ts'
import { restore } from '../backup/restore.ts'
import { moveStore } from '../copy/move-store.ts'
import { verifyStore } from '../integrity/verify-store.ts'
import { arriving } from '../journal/arriving.ts'
import { testId, testReading } from '../testing.ts'
import { openStore } from './open.ts'
import type { Store } from './store.ts'
import { filePlace, opened, postgresPlace, testFolder } from './testing.ts'

const at = '2026-03-03T10:00:00.000Z'
const envelope = '{"person":"p1"}'

async function withPeople(store: Store): Promise<void> {
  const { db } = await store.people()
  await store.write(async (journal) => {
    await journal.append([{ ...arriving(testReading(1)), envelope }, arriving(testReading(2))], at)
    await journal.holdBack([
      {
        id: testId(3),
        body: '{}',
        envelope,
        received_at: at,
        reason: 'from a closed account',
        answered_by: null,
        answer: null,
      },
    ])
    await journal.addBeside([
      {
        table: 'person',
        row: {
          id: 'p1',
          name: 'Säge',
          email: 'p1@people.invalid',
          emailVerified: true,
          image: null,
          createdAt: at,
          updatedAt: at,
          twoFactorEnabled: false,
          role: 'owner',
          closed_at: null,
          pin: null,
        },
      },
    ])
  })
  await db.insertInto('person_try').values({ key: 'stays', since: at, count: 1 }).execute()
}

test('people, envelopes and what is held move with the book, into a database and back', async () => {
  const from = await opened(await filePlace())
  await withPeople(from)
  const [beside, head] = [await from.beside(), await from.sealedHead()]
  expect(beside.map(({ table }) => table)).toEqual(['person', 'held'])
  const there = await opened(await postgresPlace())
  await moveStore(from, there)
  expect([await there.beside(), await there.sealedHead()]).toEqual([beside, head])
  const back = await opened(await filePlace())
  await moveStore(there, back)
  expect([await back.beside(), await back.sealedHead()]).toEqual([beside, head])
  expect((await back.entries({ order: 'arrival' })).map((entry) => entry.envelope)).toEqual([envelope, null])
})

test('a backup takes people, envelopes and what is held along, and brings them back', async () => {
  const from = await opened(await filePlace())
  await withPeople(from)
  const file = `${testFolder()}/backup.tar`
  await from.snapshot((journal) => backUp(journal, file))
  const place = await filePlace()
  await restore(file, place, { attachments: `${testFolder()}/attachments` })
  const restored = await opened(place)
  expect([await restored.beside(), await restored.sealedHead()]).toEqual([await from.beside(), await from.sealedHead()])
})

test('an envelope that was changed by hand is found', async () => {
  const place = await filePlace()
  const store = await opened(place)
  await withPeople(store)
  expect(await verifyStore(store)).toMatchObject({ sound: true })
  const database = new DatabaseSync((place as { file: string }).file)
  database.exec(`update entry set envelope = '{"person":"p2"}' where seq = 1`)
  database.close()
  expect(await verifyStore(store)).toMatchObject({
    sound: false,
    faults: [{ fault: 'an instant of arrival or an envelope is not the one that was written' }],
  })
})

test.each([
  ['a file', filePlace],
  ['a database', postgresPlace],
])('a backup is not restored over people without being told to, %s', async (_, place) => {
  const from = await opened(await filePlace())
  await withPeople(from)
  const file = `${testFolder()}/backup.tar`
  await from.snapshot((journal) => backUp(journal, file))
  const there = await place()
  const store = await openStore(there)
  const { db } = await store.people()
  await db.insertInto('person_secret').values({ name: 'cookies', value: 'made at the first start' }).execute()
  await store.close()
  const attachments = `${testFolder()}/attachments`
  expect(await restore(file, there, { attachments })).toMatchObject({ aside: null })
  const peopled = await place()
  const other = await openStore(peopled)
  const beside = await from.beside()
  await other.write((journal) => journal.addBeside(beside.filter(({ table }) => table === 'person')))
  await other.close()
  await expect(restore(file, peopled, { attachments })).rejects.toMatchObject({ code: 'store-not-empty' })
})

test('a place that holds people only is not empty', async () => {
  const [from, to] = [await opened(await filePlace()), await opened(await filePlace())]
  await withPeople(from)
  await to.write((journal) =>
    journal.holdBack([
      { id: testId(9), body: '{}', envelope, received_at: at, reason: 'r', answered_by: null, answer: null },
    ]),
  )
  await expect(moveStore(from, to)).rejects.toMatchObject({ code: 'store-not-empty' })
})
