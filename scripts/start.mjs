// `npm start`: installs what is missing, builds what is stale, serves the book until a signal ends it.
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import process from 'node:process'
import { installMissing, pinnedNode, root } from './install.mjs'

installMissing()
const { buildStaleWeb } = await import('./build-web.mjs')
buildStaleWeb()

const bin = join(root, 'packages', 'cli', 'bin', 'sumpbook.js')
const server = spawn(pinnedNode(), [bin, 'serve', ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
})
for (const signal of ['SIGTERM', 'SIGINT']) process.on(signal, () => server.kill(signal))
server.on('exit', (code, signal) => process.exit(code ?? (signal === null ? 1 : 0)))
