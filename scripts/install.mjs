// What a fresh machine needs before anything of ours can run. Plain JavaScript for any Node.js from 20 up.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import process from 'node:process'
import { fileURLToPath } from 'node:url'

/** The folder of the checkout. */
export const root = fileURLToPath(new URL('..', import.meta.url))

const stamp = join(root, 'node_modules', '.installed-lock')

/** Installs what the lock file names, where it is not there yet. */
export function installMissing() {
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lockHash()) return
  process.stdout.write('Installing what is missing …\n')
  run(npm, ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'])
  stampInstalled()
}

/** Notes which lock file what is installed came from; npm calls this after every installation of its own too. */
export const stampInstalled = () => writeFileSync(stamp, lockHash())

const lockHash = () =>
  createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex')

/** The Node.js that runs the product: the pinned one of this platform, else this one where it is new enough. */
export function pinnedNode() {
  const name = `node-${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`
  const binary = join(root, 'node_modules', name, 'bin', process.platform === 'win32' ? 'node.exe' : 'node')
  if (existsSync(binary)) return binary
  if (Number(process.versions.node.split('.')[0]) >= 24) return process.execPath
  process.stderr.write(
    `Sumpbook needs Node.js 24 or newer; this is ${process.versions.node}, and none is packaged for ${name}.\n`,
  )
  process.exit(1)
}

/** Runs a command to its end; ours ends with it where it fails. */
export function run(command, args, options = {}) {
  const [program, ...first] = Array.isArray(command) ? command : [command]
  const { status, signal, error } = spawnSync(program, [...first, ...args], { cwd: root, stdio: 'inherit', ...options })
  if (error !== undefined) process.stderr.write(`${program}: ${error.message}\n`)
  if (status !== 0) process.exit(signal === null ? (status ?? 1) : 1)
}

/** npm as it called us, else the one on the path. */
const npm =
  process.env.npm_execpath === undefined
    ? process.platform === 'win32'
      ? ['npm.cmd']
      : ['npm']
    : [process.execPath, process.env.npm_execpath]
