import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { startPostgres } from '../../tests/postgres/start.ts'
import { killPostgresRun } from './kill-postgres-run.ts'
import { killServerRun } from './kill-server-run.ts'

const nothingWrong = { lost: [], doubled: [], faults: [] }

test('a server killed under load has lost and doubled nothing that it acknowledged', { timeout: 120_000 }, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-kill-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  const file = join(folder, 'book.sqlite')
  const figures = await killServerRun({ kind: 'file', file }, { times: 5, checkEvery: 2, longestMs: 400 })
  expect(figures).toMatchObject({ kills: 5, ...nothingWrong })
  expect(figures.acknowledged).toBeGreaterThan(20)
  expect(figures.entries).toBe(figures.acknowledged)
})

test('servers whose database is killed under load go on without a restart and have lost nothing', {
  timeout: 120_000,
}, async () => {
  const database = await startPostgres()
  onTestFinished(() => database.stop())
  const figures = await killPostgresRun(database, 'book', { times: 2, longestMs: 400 })
  expect(figures).toMatchObject({ kills: 2, refusedMeanwhile: 2, ...nothingWrong })
  expect(figures.acknowledged).toBeGreaterThan(20)
  expect(figures.entries).toBe(figures.acknowledged)
})
