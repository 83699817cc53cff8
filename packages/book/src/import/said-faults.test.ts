import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { learn, type Speech, speakAs } from '@sumpbook/fluid'
import { afterEach, beforeAll, expect, onTestFinished, test } from 'vitest'
import { openStore } from '../store/open.ts'
import { testNow } from '../testing.ts'
import { catalogue as german } from '../words/de.ts'
import { catalogue as spanish } from '../words/es.ts'
import { importInWorker } from './import-in-worker.ts'
import { csv, metric, preview } from './sheet/testing.ts'

const english: Speech = { language: 'en', numbers: 'en' }

beforeAll(() => {
  learn('de', german)
  learn('es', spanish)
})
afterEach(() => speakAs(() => english))

const faulty = 'Date;Machine;Brix;pH;Pumps\n2026-03-02;Mill 7;3,4;19;perhaps\n31.02.2026;Mill 7;much;9,1;on\n'
const faultsOf = async () => (await preview(csv(faulty), {}, metric())).faults.map(({ expected }) => expected)

test('what is wrong with a sheet is said in the language of whoever brings it', async () => {
  expect(await faultsOf()).toEqual([
    'running or stopped',
    'at most 14',
    'a day that the calendar has',
    'a number, or nothing',
  ])
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  expect(await faultsOf()).toEqual([
    'laufen oder stehen',
    'höchstens 14',
    'ein Tag, den es im Kalender gibt',
    'eine Zahl oder nichts',
  ])
  speakAs(() => ({ language: 'es', numbers: 'es-ES' }))
  expect(await faultsOf()).toContain('un día que exista en el calendario')
})

test('a thread that takes a file in speaks as whoever gave it the file', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-said-'))
  const store = await openStore({ kind: 'file', file: join(folder, 'book.sqlite') })
  onTestFinished(async () => {
    await store.close()
    rmSync(folder, { recursive: true, force: true })
  })
  const bring = () => importInWorker(store, csv('nothing here\n'), testNow)
  await expect(bring()).rejects.toThrow(/^The sheet was refused: the document: found no row of headings/)
  speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
  await expect(bring()).rejects.toMatchObject({
    message: expect.stringMatching(/^Abgelehnt \(Tabelle\): das Dokument: gefunden keine Zeile mit Überschriften/),
    faults: [{ pointer: '', expected: expect.stringMatching(/^eine Zeile mit der Überschrift eines Datums/) }],
  })
})
