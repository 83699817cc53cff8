import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { fileURLToPath } from 'node:url'
import { expect, onTestFinished, test } from 'vitest'
import { main } from '../main.ts'

function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'sumpbook-people-'))
  onTestFinished(() => rmSync(path, { recursive: true, force: true }))
  return path
}

async function run(cwd: string, ...args: string[]) {
  let [out, err] = ['', '']
  const sink = (take: (text: string) => void) =>
    new Writable({
      write: (chunk: Buffer, _, done) => {
        take(chunk.toString())
        done()
      },
    })
  const world = {
    env: {},
    stdin: Readable.from([]),
    stdout: sink((text) => {
      out += text
    }),
    stderr: sink((text) => {
      err += text
    }),
    cwd: () => cwd,
  }
  return { code: await main(args, world), out, err }
}

test('an owner who is locked out invites, changes and lets back in at the machine', async () => {
  const cwd = folder()
  expect((await run(cwd, 'people')).out).toContain('nobody yet')
  const added = await run(cwd, 'people', 'add', 'Ada', '--role', 'owner')
  expect(added.out).toMatch(/Ada: owner, has not come yet\nThe code for Ada, .*: [0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4}\n/)
  await run(cwd, 'people', 'add', 'Ben', 'operator')
  expect(JSON.parse((await run(cwd, 'people', 'role', 'Ben', 'keeper', '--json')).out)).toMatchObject({
    people: [{ name: 'Ben', role: 'keeper' }],
    code: null,
  })
  expect((await run(cwd, 'people', 'close', 'Ben')).out).toContain('closed')
  expect(await run(cwd, 'people', 'code', 'Ben')).toMatchObject({ code: 3, out: '' })
  await run(cwd, 'people', 'open', 'Ben')
  expect((await run(cwd, 'people', 'code', 'Ben')).out).toContain('The code for Ben')
})

test.each([
  ['a role there is not', ['people', 'add', 'Ada', '--role', 'king'], 2],
  ['no name', ['people', 'close'], 2],
  ['a verb there is not', ['people', 'crown', 'Ada'], 3],
  ['somebody there is not', ['people', 'code', 'Eve'], 3],
])('%s is refused', async (_, args, code) => {
  expect(await run(folder(), ...args)).toMatchObject({ code, out: '' })
})

const bin = fileURLToPath(new URL('../../bin/sumpbook.js', import.meta.url))

/** `sumpbook serve` as its own program, and what it has printed once it listens. */
async function serve(cwd: string, ...flags: string[]): Promise<{ address: string; said: () => string }> {
  const child = spawn(process.execPath, [bin, 'serve', '--port', '0', ...flags], {
    cwd,
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  onTestFinished(async () => {
    child.kill()
    await new Promise((resolve) => child.once('exit', resolve))
  })
  let text = ''
  await new Promise<void>((resolve, reject) => {
    child.stdout.on('data', (chunk: Buffer) => {
      text += chunk.toString()
      if (text.includes('open at')) resolve()
    })
    child.once('exit', () => reject(new Error('the server ended')))
  })
  const [, address] = /open at (\S+)/.exec(text)!
  return { address: address!, said: () => text }
}

test('where accounts are needed, serve prints a code, and until it is used offers nothing else', {
  timeout: 30_000,
}, async () => {
  const cwd = folder()
  const { address, said } = await serve(cwd, '--accounts')
  await expect.poll(said).toMatch(/type this code/)
  const [, code] = /: ([0-9A-Z-]{14})\n/.exec(said())!
  expect((await fetch(`${address}/api/v1/book`)).status).toBe(401)
  const first = await fetch(`${address}/api/v1/session/first-run`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code, name: 'Ada', login: 'ada', password: 'slow grey heron 7' }),
  })
  expect(first.status).toBe(201)
  const [cookie] = first.headers.getSetCookie()
  expect((await fetch(`${address}/api/v1/book`, { headers: { cookie: cookie!.split(';')[0]! } })).status).toBe(200)
  expect((await run(cwd, 'people')).out).toBe('Ada: owner, ada\n')
  const again = await serve(cwd, '--accounts')
  expect((await fetch(`${again.address}/api/v1/session`).then((answer) => answer.json())) as object).toMatchObject({
    firstRun: false,
  })
  expect(again.said()).not.toContain('code')
})

test('on loopback alone no account is needed', { timeout: 30_000 }, async () => {
  const { address, said } = await serve(folder())
  expect((await fetch(`${address}/api/v1/book`)).status).toBe(200)
  expect(said()).not.toContain('code')
})
