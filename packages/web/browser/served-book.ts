import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const bin = fileURLToPath(new URL('../../cli/bin/sumpbook.js', import.meta.url))

/** A server of its own, as `sumpbook serve` starts it, on loopback and a free port, with a book in a folder of its own. */
export interface ServedBook {
  address: string
  /** Stops the process and starts another on the same book. */
  restart(): Promise<void>
  /** Stops the process; the book goes with it. */
  end(): Promise<void>
}

export async function serveBook(): Promise<ServedBook> {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-browser-'))
  let running = await start(folder, 0)
  return {
    get address() {
      return running.address
    },
    restart: async () => {
      await stop(running.server)
      running = await start(folder, Number(new URL(running.address).port))
    },
    end: async () => {
      await stop(running.server)
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function start(folder: string, port: number): Promise<{ server: ChildProcess; address: string }> {
  const server = spawn(process.execPath, [bin, 'serve', '--port', String(port), '--data', folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const { promise, resolve, reject } = Promise.withResolvers<string>()
  let said = ''
  server.stdout!.on('data', (chunk: Buffer) => {
    said += chunk.toString()
    const address = /http:\/\/\S+/.exec(said)?.[0]
    if (address !== undefined) resolve(address)
  })
  server.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${said}`)))
  return { server, address: await promise }
}

async function stop(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null) return
  const ended = new Promise((resolve) => server.once('exit', resolve))
  server.kill('SIGTERM')
  await ended
}
