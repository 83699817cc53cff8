import { stat } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { type BackupReport, backUp, noteBackup, noteDrill, openStore, restoreDrill, type Store } from '@sumpbook/book'
import { say } from '@sumpbook/fluid'
import { type Command, exits } from '../command.ts'
import { oneFile, parse } from '../options.ts'
import { readSettings } from '../settings.ts'
import { drillText } from './restore.ts'

/** Writes a backup of the book. */
export const backup: Command = {
  summary: 'Writes the whole book and its attachments to one file, checked after writing',
  usage: `sumpbook backup FILE [--drill] [--data FOLDER | --database-url URL] [--json]

  FILE      where to; a file of that name is replaced only when the new one was read back and found whole
  --drill   restores it into a temporary folder, compares, and takes that away again

The book may be in use meanwhile: the backup is of one moment. Ends with 1 where an attachment had to be left out because it
is damaged.`,
  run: async (args, world) => {
    const { values, positionals } = parse(args, { drill: { type: 'boolean', default: false } })
    const file = resolve(world.cwd(), oneFile(positionals))
    const { place, folder } = readSettings(values, world)
    const store = await openStore(place, { copies: folder, mustExist: true })
    try {
      const report = await store.snapshot((journal) =>
        backUp(journal, file, { attachments: join(folder, 'attachments') }),
      )
      const drill = values.drill ? await restoreDrill(file, store) : null
      if (!(await noted(store, report, drill?.seconds ?? null))) {
        world.stderr.write(`${say('The backup is good; that it was made could not be noted in the book.')}\n`)
      }
      const text = `${reportText(report)}${drill === null ? '' : drillText(drill)}`
      world.stdout.write(values.json ? `${JSON.stringify({ ...report, drill }, null, 2)}\n` : text)
      for (const name of report.damagedAttachments)
        world.stderr.write(`${say('Left out, since it is damaged: attachment {name}', { name })}\n`)
      return report.damagedAttachments.length === 0 ? exits.done : exits.failed
    } finally {
      await store.close()
    }
  },
}

/** The Shop page shows when the last backup was made. @returns whether the book took the note */
async function noted(store: Store, report: BackupReport, drillSeconds: number | null): Promise<boolean> {
  const at = new Date()
  try {
    await noteBackup(store, { report, bytes: (await stat(report.file)).size, at })
    if (drillSeconds !== null) await noteDrill(store, { at, seconds: drillSeconds, error: null })
    return true
  } catch {
    return false
  }
}

function reportText({ file, entries, things, attachments, head }: BackupReport): string {
  const counts = { file, entries, things, attachments }
  const lines = [
    say(
      'Backed up into {file}, read back and found whole: {entries} entries, {things} things, {attachments} attachments.',
      counts,
    ),
    say('Its chain ends at {head}', { head: `${head.seq}:${head.hash}` }),
  ]
  return `${lines.join('\n')}\n`
}
