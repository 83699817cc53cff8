/** `sumpbook serve` as a process of the system. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, onTestFinished, test } from 'vitest'

const bin = fileURLToPath(new URL('../../bin/sumpbook.js', import.meta.url))

async function serving(flags: string[], env: Record<string, string> = {}): Promise<ChildProcess> {
  const data = mkdtempSync(join(tmpdir(), 'sumpbook-serve-'))
  const child = spawn(process.execPath, [...flags, bin, 'serve', '--port', '0', '--data', data], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, ...env },
  })
  onTestFinished(async () => {
    child.kill('SIGKILL')
    rmSync(data, { recursive: true, force: true })
  })
  await new Promise<void>((resolve, reject) => {
    child.stdout!.on('data', (chunk: Buffer) => {
      if (chunk.toString().includes('open at')) resolve()
    })
    child.once('exit', () => reject(new Error('the server ended')))
  })
  return child
}

/** What the process was begun with, as the system knows it. */
const begunWith = ({ pid }: ChildProcess) => spawnSync('ps', ['-ww', '-o', 'args=', '-p', `${pid}`]).stdout.toString()

test('the server keeps the room for short-lived objects small, in the process that was started', {
  timeout: 60_000,
}, async () => {
  const child = await serving(['--no-deprecation'])
  expect(begunWith(child)).toMatch(/--no-deprecation --max-semi-space-size=4 \S+sumpbook\.js serve/)
  const ended = new Promise((resolve) => child.once('exit', (code) => resolve(code)))
  child.kill('SIGTERM')
  expect(await ended).toBe(0)
})

test.each([
  ['by a flag', ['--max-semi-space-size=32'], {}],
  ['by the environment', [], { NODE_OPTIONS: '--max-semi-space-size=32' }],
])('whoever gives that size %s keeps theirs', { timeout: 60_000 }, async (_, flags, env) => {
  const child = await serving(flags, env)
  expect(begunWith(child)).not.toContain('--max-semi-space-size=4')
})
