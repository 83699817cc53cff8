// `node bench/record/idle-memory.ts`: what `sumpbook serve` holds of the machine's memory while nobody asks, without accounts and with, beside the same
// with the engine's own size of the room for short-lived objects; and after the example shop's list was looked at.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { keepFigures } from './keep-figures.ts'
import { residentMB } from './resident.ts'
import { type ServerProcess, startServer } from './server-process.ts'

const limitMB = 150
/** As long as a server is left alone before it is looked at. */
const restMs = 3000
/** What V8 takes by itself on a machine of 64 bits. */
const engineSize = { NODE_OPTIONS: '--max-semi-space-size=16' }

const plain = await measured([], {})
const withAccounts = await measured(['--accounts'], {})
const engines = await measured([], engineSize)
keepFigures(
  'memory at rest',
  { limitMB, plain, withAccounts, withTheEnginesNursery: engines },
  plain.startedMB <= limitMB && withAccounts.startedMB <= limitMB && withAccounts.signedInMB! <= limitMB,
)

async function measured(flags: string[], env: Record<string, string>) {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-memory-'))
  const server = await startServer(['--data', folder, ...flags], { SUMPBOOK_LOG: 'silent', ...env })
  try {
    const startedMB = await atRest(server)
    const cookie = flags.includes('--accounts') ? await ownBook(server) : ''
    const signedInMB = cookie === '' ? null : await atRest(server)
    await asked(server, '/demo', { method: 'POST', headers: { cookie } })
    for (let time = 0; time < 5; time++) await asked(server, '/today', { headers: { cookie } })
    return { startedMB, signedInMB, afterTodayMB: await atRest(server) }
  } finally {
    await server.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}

async function atRest({ pid }: ServerProcess): Promise<number> {
  await pause(restMs)
  return residentMB(pid)
}

async function asked({ address }: ServerProcess, path: string, init: RequestInit): Promise<Response> {
  const answer = await fetch(`${address}/api/v1${path}`, init)
  await answer.text()
  if (!answer.ok) throw new Error(`${path} answered ${answer.status}`)
  return answer
}

/** @returns the first owner's cookie */
async function ownBook(server: ServerProcess): Promise<string> {
  const [, code] = /: ([0-9A-Z]{4}(?:-[0-9A-Z]{4}){2})/.exec(server.said())!
  const answer = await asked(server, '/session/first-run', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code, name: 'Ada Owner', login: 'ada', password: 'slow grey heron 7' }),
  })
  return answer.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0])
    .join('; ')
}
