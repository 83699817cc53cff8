// Builds the web app where its sources are newer than what was built.
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import process from 'node:process'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { pinnedNode, root, run } from './install.mjs'

const stamp = join(root, 'packages', 'web', 'dist', '.sources')
const sources = [
  'packages/web/src',
  'packages/web/public',
  'packages/web/index.html',
  'packages/web/vite.config.ts',
  'packages/web/vite',
  'packages/fluid/src',
  'package-lock.json',
]

/** Builds `packages/web/dist` where it is missing or stale. */
export function buildStaleWeb() {
  const now = hashOf(sources.map((source) => join(root, source)))
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return
  process.stdout.write('Building the web app …\n')
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js')
  run(pinnedNode(), [vite, 'build', '--logLevel', 'warn'], { cwd: join(root, 'packages', 'web') })
  compressBuilt()
  writeFileSync(stamp, now)
}

/** Beside each text its compressed forms, which the server sends to whoever takes them: a third of the bytes on the shop's radio. */
function compressBuilt() {
  for (const path of filesIn(join(root, 'packages', 'web', 'dist')).filter((one) =>
    /\.(html|js|css|svg|webmanifest)$/.test(one),
  )) {
    const text = readFileSync(path)
    writeFileSync(`${path}.gz`, gzipSync(text, { level: 9 }))
    writeFileSync(`${path}.br`, brotliCompressSync(text))
  }
}

function hashOf(paths) {
  const hash = createHash('sha256')
  for (const path of paths.flatMap(filesIn)) hash.update(path.slice(root.length)).update(readFileSync(path))
  return hash.digest('hex')
}

function filesIn(path) {
  const stat = statSync(path, { throwIfNoEntry: false })
  if (stat === undefined) return []
  return stat.isDirectory()
    ? readdirSync(path)
        .sort()
        .flatMap((name) => filesIn(join(path, name)))
    : [path]
}
