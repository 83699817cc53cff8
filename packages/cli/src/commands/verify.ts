import { join } from 'node:path'
import {
  type KnownHead,
  openStore,
  type StoreReport,
  sayStoreFault,
  verifyStore,
  withAttachments,
} from '@sumpbook/book'
import { say } from '@sumpbook/fluid'
import { type Command, exits, UsageError } from '../command.ts'
import { parse } from '../options.ts'
import { readSettings } from '../settings.ts'

/** Looks whether the book is as it was written. */
export const verify: Command = {
  summary: 'Walks the whole book and says whether it is as it was written',
  usage: `sumpbook verify [--head PLACE:HASH] [--data FOLDER | --database-url URL] [--json]

  --head   the end of the chain as it was printed or kept elsewhere; the hash may be cut short

Every place, hash and seal is worked out anew from the entries themselves, and every attachment is read: a damaged one is a
fault, one that an entry names and that is not there a remark. Ends with 0 where the book is sound, else with 1
and what is wrong, the first fault first. The book may be in use meanwhile.`,
  run: async (args, world) => {
    const { values } = parse(args, { head: { type: 'string' } })
    const known = headOf(values.head)
    const { place, folder } = readSettings(values, world)
    const store = await openStore(place, { copies: folder, mustExist: true })
    try {
      const report = await withAttachments(await verifyStore(store, known), store, join(folder, 'attachments'))
      world.stdout.write(values.json ? `${JSON.stringify(report, null, 2)}\n` : reportText(report))
      return report.sound ? exits.done : exits.failed
    } finally {
      await store.close()
    }
  },
}

function headOf(text: string | undefined): KnownHead | undefined {
  if (text === undefined) return undefined
  const [, seq, hash] = /^(\d+):([0-9a-fA-F]{8,64})$/.exec(text) ?? []
  if (seq === undefined || hash === undefined) {
    throw new UsageError(
      `--head: found "${text}", expected a place and at least 8 digits of its hash, such as 120:9f86d081`,
    )
  }
  return { seq: Number(seq), hash }
}

function reportText({ sound, entries, things, head, faults, more, remarks }: StoreReport): string {
  const lines = [
    sound
      ? say('The book is as it was written: {entries} entries, {things} things.', { entries, things })
      : say('The book is not as it was written. The first of {count} faults:', { count: faults.length + more }),
    ...faults.map((fault) => `  ${sayStoreFault(fault)}`),
    ...(more === 0 ? [] : [`  ${say('and {count} more', { count: more })}`]),
    ...remarks,
    say('Its chain ends at {head}', { head: `${head.seq}:${head.hash}` }),
  ]
  return `${lines.join('\n')}\n`
}
