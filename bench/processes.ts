import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const bin = fileURLToPath(new URL('../packages/cli/bin/sumpbook.js', import.meta.url))

/** Runs the command line to its end under GNU time: seconds by the clock, and the peak memory of the process in MB. */
export function runOnce(args: string[]): { seconds: number; peakMB: number } {
  const from = performance.now()
  const timed = ['-f', 'peak %M', process.execPath, bin, ...args]
  const { status, stderr } = spawnSync('/usr/bin/time', timed, {
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  const seconds = (performance.now() - from) / 1000
  const peak = /peak (\d+)/.exec(stderr)?.[1]
  if (status !== 0 || peak === undefined) throw new Error(`sumpbook ${args.join(' ')} failed: ${stderr}`)
  return { seconds, peakMB: Number(peak) / 1024 }
}

/** The same without the memory, without a process between. */
export function secondsOf(args: string[]): number {
  const from = performance.now()
  const { status } = spawnSync(process.execPath, [bin, ...args], { stdio: 'ignore' })
  if (status !== 0) throw new Error(`sumpbook ${args.join(' ')} failed`)
  return (performance.now() - from) / 1000
}

/** A server as its own process, until `stop`. */
export interface Served {
  address: string
  /** From the start of the process to its first answer. */
  seconds: number
  stop(): Promise<void>
}

export const serve = (args: string[]): Promise<Served> => startServer([bin, 'serve', '--port', '0', ...args])

/** Starts a script that prints the address it listens on. */
export async function startServer(args: string[]): Promise<Served> {
  const from = performance.now()
  const server: ChildProcess = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] })
  const address = await new Promise<string>((resolve, reject) => {
    server.stdout!.on('data', (chunk: Buffer) => {
      const found = /http:\/\/\S+/.exec(chunk.toString())?.[0]
      if (found !== undefined) resolve(found.replace('localhost', '127.0.0.1'))
    })
    server.once('exit', (code) => reject(new Error(`the server ended with ${code}`)))
  })
  await (await fetch(`${address}/livez`)).text()
  const seconds = (performance.now() - from) / 1000
  const stop = async () => {
    const ended = new Promise((resolve) => server.once('exit', resolve))
    server.kill('SIGTERM')
    await ended
  }
  return { address, seconds, stop }
}
