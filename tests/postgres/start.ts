import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { chmodSync, chownSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { connect, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as delay } from 'node:timers/promises'
import { type Binaries, layBinaries } from './binaries.ts'

/** A real PostgreSQL server on loopback, with its data in a temporary folder. */
export interface PostgresServer {
  /** Of its one database. */
  url: string
  /** Ends every process of it at once, as a power cut of the machine would (`SIGKILL`). */
  kill(): Promise<void>
  /** Starts it again on the same data. */
  restart(): Promise<void>
  /** Ends it and takes its data away. */
  stop(): Promise<void>
}

/** A server does not run as root: root runs it as `nobody`. */
const asNobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {}

/** Words sort here by the rules of a language: a book that relied on the server's order would show. */
const order = ['--encoding=UTF8', '--locale=C', '--locale-provider=icu', '--icu-locale=en-US']

/** @throws where no server can be had; nothing is left running */
export async function startPostgres(): Promise<PostgresServer> {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-postgres-'))
  const remove = () => rmSync(folder, { recursive: true, force: true })
  process.once('exit', remove)
  try {
    chmodSync(folder, 0o755)
    const binaries = layBinaries(join(folder, 'programs'))
    makeCluster(binaries, folder)
    const port = await freePort()
    let server = await run(binaries, folder, port)
    return {
      url: `postgresql://sumpbook@127.0.0.1:${port}/postgres`,
      kill: () => end(server, 'SIGKILL'),
      restart: async () => {
        server = await runAgain(() => run(binaries, folder, port))
      },
      stop: async () => {
        await end(server, 'SIGINT')
        remove()
        process.off('exit', remove)
      },
    }
  } catch (error) {
    remove()
    throw error
  }
}

function makeCluster({ initdb }: Binaries, folder: string): void {
  const data = join(folder, 'data')
  mkdirSync(data, { mode: 0o700 })
  if (asNobody.uid !== undefined) chownSync(data, asNobody.uid, asNobody.gid)
  const { status, stderr, error } = spawnSync(
    initdb,
    ['-D', data, '-U', 'sumpbook', '-A', 'trust', '--no-sync', ...order],
    { ...asNobody, cwd: folder, encoding: 'utf8', env: environment },
  )
  if (status !== 0) throw new Error(`PostgreSQL made no cluster: ${error?.message ?? stderr}`)
}

/** Nothing of a person's own PostgreSQL settings. */
const environment = { PATH: process.env.PATH, LC_ALL: 'C', TZ: 'UTC' }

/** A server that was killed leaves processes that hold its memory until they notice: it is waited for. */
async function runAgain(start: () => Promise<ChildProcess>): Promise<ChildProcess> {
  for (let tries = 1; ; tries++) {
    try {
      return await start()
    } catch (error) {
      if (tries === 100 || !/still in use/.test(String(error))) throw error
      await delay(100)
    }
  }
}

async function run({ postgres }: Binaries, folder: string, port: number): Promise<ChildProcess> {
  const settings = { listen_addresses: '127.0.0.1', unix_socket_directories: '', port, max_connections: 100 }
  const flags = Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`])
  const server = spawn(postgres, ['-D', join(folder, 'data'), ...flags], {
    ...asNobody,
    cwd: folder,
    env: environment,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  let said = ''
  server.stderr!.on('data', (chunk: Buffer) => {
    said = (said + chunk.toString()).slice(-4000)
  })
  server.stderr!.once('error', () => {})
  const killAtExit = () => signal(server, 'SIGKILL')
  process.once('exit', killAtExit)
  server.once('exit', () => process.off('exit', killAtExit))
  for (let waited = 0; waited < 60_000; waited += 20) {
    if (server.exitCode !== null || server.signalCode !== null) throw new Error(`PostgreSQL ended: ${said}`)
    if (await answers(port)) return server
    await delay(20)
  }
  await end(server, 'SIGKILL')
  throw new Error(`PostgreSQL does not answer: ${said}`)
}

/** Asks for encryption and looks whether anybody answers: the server takes connections when its recovery is over. */
function answers(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1')
    const done = (answer: boolean) => {
      socket.destroy()
      resolve(answer)
    }
    socket.setTimeout(2000, () => done(false))
    socket.once('error', () => done(false))
    socket.once('close', () => done(false))
    // The message of a start with a user: 'R' is the welcome, 'E' is "the database system is starting up".
    const words = Buffer.from('user\0sumpbook\0database\0postgres\0\0')
    const head = Buffer.alloc(8)
    head.writeInt32BE(8 + words.length, 0)
    head.writeInt32BE(196_608, 4)
    socket.once('connect', () => socket.write(Buffer.concat([head, words])))
    socket.once('data', (chunk) => done(chunk[0] === 0x52))
  })
}

async function end(server: ChildProcess, by: 'SIGKILL' | 'SIGINT'): Promise<void> {
  if (server.exitCode !== null || server.signalCode !== null) return
  const ended = new Promise((resolve) => server.once('exit', resolve))
  if (by === 'SIGKILL') signal(server, by)
  else server.kill(by)
  await ended
}

/** To the server and every process of it; each of those leads a session of its own, so that a group does not reach them. */
function signal({ pid }: ChildProcess, name: NodeJS.Signals): void {
  if (pid === undefined) return
  for (const one of [pid, ...childrenOf(pid)]) {
    try {
      process.kill(one, name)
    } catch {
      // Gone already.
    }
  }
}

function childrenOf(pid: number): number[] {
  try {
    return readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean).map(Number)
  } catch {
    // No such list on this system: the others end when they see that the first is gone.
    return []
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number }
      probe.close(() => resolve(port))
    })
  })
}
