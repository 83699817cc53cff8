import type { Kysely } from 'kysely'
import { emptyHead } from '../../journal/chain.ts'
import { arrivalRow, emptySeal, metaRow, type Seal, sealed, thingRow } from '../seals.ts'
import type { Tables } from '../tables.ts'

/** Rows read at a time. */
const rowsAtOnce = 5000

/**
 * The head is there from the start, so that the first two writers can wait for each other at it, and seals what the chain
 * leaves out: the things as they first came in, the instants of arrival, what the book says of itself.
 */
export async function up(db: Kysely<Tables>): Promise<void> {
  for (const column of ['setup_hash', 'things_seal', 'arrivals_seal', 'meta_seal']) {
    await db.schema
      .alterTable('head')
      .addColumn(column, 'text', (add) => add.notNull().defaultTo(emptySeal))
      .execute()
  }
  const { seq: none, hash } = emptyHead
  await db
    .insertInto('head')
    .values({ one: 1, seq: none, hash, setup_seq: 0, ...noSeals })
    .onConflict((conflict) => conflict.column('one').doNothing())
    .execute()
  const { setup_seq: setupSeq } = await db.selectFrom('head').select('setup_seq').executeTakeFirstOrThrow()
  const setup = await db.selectFrom('entry').select('hash').where('seq', '=', setupSeq).executeTakeFirst()
  const things = await db.selectFrom('thing').selectAll().execute()
  const meta = await db.selectFrom('meta').selectAll().execute()
  await db
    .updateTable('head')
    .set({
      setup_hash: setup?.hash ?? emptyHead.hash,
      things_seal: sealed(emptySeal, things.map(thingRow)),
      arrivals_seal: await arrivalsSeal(db),
      meta_seal: sealed(emptySeal, meta.map(metaRow)),
    })
    .execute()
}

const noSeals = { setup_hash: emptyHead.hash, things_seal: emptySeal, arrivals_seal: emptySeal, meta_seal: emptySeal }

async function arrivalsSeal(db: Kysely<Tables>): Promise<Seal> {
  let seal = emptySeal
  for (let after = 0; ; ) {
    const rows = await db
      .selectFrom('entry')
      .select(['seq', 'received_at as receivedAt'])
      .where('seq', '>', after)
      .orderBy('seq')
      .limit(rowsAtOnce)
      .execute()
    seal = sealed(seal, rows.map(arrivalRow))
    if (rows.length < rowsAtOnce) return seal
    after = rows.at(-1)!.seq
  }
}
