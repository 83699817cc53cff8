import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const bin = fileURLToPath(new URL('../../packages/cli/bin/sumpbook.js', import.meta.url))

/** A server as its own process. */
export interface ServerProcess {
  address: string
  pid: number
  /** What it has printed so far. */
  said(): string
  /** Ends it at once, in whatever it is doing (`SIGKILL`). */
  kill(): Promise<void>
  /** Ends it as a person would. */
  stop(): Promise<void>
}

/** Starts `sumpbook serve` with more arguments and settings, and waits for its address. */
export async function startServer(args: string[], env: Record<string, string> = {}): Promise<ServerProcess> {
  const server = spawn(process.execPath, [bin, 'serve', '--port', '0', ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...env },
  })
  const killAtExit = () => server.kill('SIGKILL')
  process.once('exit', killAtExit)
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()))
  void ended.then(() => process.off('exit', killAtExit))
  let [said, printed] = ['', '']
  server.stderr.on('data', (chunk: Buffer) => {
    said = (said + chunk.toString()).slice(-4000)
  })
  const address = await new Promise<string>((resolve, reject) => {
    server.stdout.on('data', (chunk: Buffer) => {
      printed += chunk.toString()
      const found = /http:\/\/\S+/.exec(printed)?.[0]
      if (found !== undefined) resolve(found.replace('localhost', '127.0.0.1'))
    })
    server.once('exit', (code, signal) => reject(new Error(`the server ended with ${code ?? signal}: ${said}`)))
  })
  const end = (signal: NodeJS.Signals) => async () => {
    server.kill(signal)
    await ended
  }
  return { address, pid: server.pid!, said: () => printed, kill: end('SIGKILL'), stop: end('SIGTERM') }
}
