import { type ChildProcess, spawn } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { inject } from 'vitest'

const bin = fileURLToPath(new URL('../../cli/bin/sumpbook.js', import.meta.url))

/** A server of its own, as `sumpbook serve` starts it, on loopback and a free port, with a book in a folder of its own. */
export interface ServedBook {
  address: string
  /** What it has printed so far. */
  said(): string
  /** Stops the process and starts another on the same book. */
  restart(): Promise<void>
  /** Stops the process: nobody answers at its address until it is restarted. */
  stop(): Promise<void>
  /** Stops the process; the book goes with it. */
  end(): Promise<void>
}

interface Running {
  server: ChildProcess
  address: string
  said(): string
}

/** An empty book. @param flags of `sumpbook serve`, beside port and folder */
export const serveBook = (...flags: string[]): Promise<ServedBook> => serveFolder(newFolder(), flags)

/** The example shop, as `POST /api/v1/demo` makes it of an empty book. */
export async function serveExample(): Promise<ServedBook> {
  const folder = newFolder()
  cpSync(inject('exampleFolder'), folder, { recursive: true })
  return serveFolder(folder, [])
}

const newFolder = () => mkdtempSync(join(tmpdir(), 'sumpbook-browser-'))

async function serveFolder(folder: string, flags: readonly string[]): Promise<ServedBook> {
  let running = await start(folder, 0, flags)
  return {
    get address() {
      return running.address
    },
    said: () => running.said(),
    restart: async () => {
      await stop(running.server)
      running = await start(folder, Number(new URL(running.address).port), flags)
    },
    stop: () => stop(running.server),
    end: async () => {
      await stop(running.server)
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function start(folder: string, port: number, flags: readonly string[]): Promise<Running> {
  const server = spawn(process.execPath, [bin, 'serve', '--port', String(port), '--data', folder, ...flags], {
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
  return { server, address: await promise, said: () => said }
}

async function stop(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null) return
  const ended = new Promise((resolve) => server.once('exit', resolve))
  server.kill('SIGTERM')
  await ended
}
