// `unshare -Urm node bench/record/disk-full.ts`: a disk of 6 MB in memory, filled while the server is written to; Linux only.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { checkBook } from './check-book.ts'
import { keepFigures } from './keep-figures.ts'
import { nothingSent, sendOpen, sendUntil } from './load.ts'
import { startServer } from './server-process.ts'

const folder = mkdtempSync(join(tmpdir(), 'sumpbook-disk-'))
const run = (program: string, ...args: string[]) => {
  const { status, stderr } = spawnSync(program, args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(`${program}: ${stderr} (start this by "unshare -Urm")`)
}
run('mount', '-t', 'tmpfs', '-o', 'size=6m', 'tmpfs', folder)
try {
  const place = { kind: 'file', file: join(folder, 'book.sqlite') } as const
  const server = await startServer(['--data', place.file])
  const sent = nothingSent()
  const status = async (path: string) => (await fetch(server.address + path)).status
  // The disk's last megabytes are somebody else's.
  const fillerMB = 4
  writeFileSync(join(folder, 'filler'), Buffer.alloc(fillerMB << 20))
  await sendUntil(server.address, sent, () => false)
  const open = [...sent.open.values()]
  const first = open[0]!
  const answer = await fetch(`${server.address}/api/v1/entries/${first.id}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(first),
  })
  const full = { write: answer.status, type: ((await answer.json()) as { type: string }).type }
  const reading = [await status('/api/v1/today'), await status('/api/v1/changes'), await status('/readyz')]
  const backup = spawnSync(process.execPath, [
    join(import.meta.dirname, '../../packages/cli/bin/sumpbook.js'),
    ...['backup', join(folder, 'backup.tar'), '--data', place.file],
  ])
  rmSync(join(folder, 'filler'))
  const recovered = await sendOpen(server.address, sent)
  await server.stop()
  const fate = await checkBook(place, sent)
  const good =
    full.write === 507 &&
    reading.every((code) => code === 200) &&
    recovered &&
    fate.lost.length + fate.doubled.length + fate.faults.length === 0
  keepFigures(
    'disk full',
    { acknowledged: sent.acknowledged.size, full, reading, backupExit: backup.status, recovered, ...fate },
    good,
  )
} finally {
  run('umount', '-l', folder)
  rmSync(folder, { recursive: true, force: true })
}
