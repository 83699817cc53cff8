// `npm test`: installs, builds, and runs every check; the last line counts the tests.
import { readFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import process from 'node:process'
import { installMissing, pinnedNode, root, run } from './install.mjs'

installMissing()
const { buildStaleWeb } = await import('./build-web.mjs')
buildStaleWeb()

const node = pinnedNode()
const modules = join(root, 'node_modules')
// Whatever calls "node" inside a test gets the pinned one.
const env = { ...process.env, PATH: `${join(modules, '.bin')}${delimiter}${process.env.PATH}` }

const step = (title, command, args) => {
  process.stdout.write(`\n— ${title}\n`)
  run(command, args, { env })
}

step('format and lint', node, [
  join(modules, '@biomejs', 'biome', 'bin', 'biome'),
  'ci',
  '--error-on-warnings',
  ...(process.stdout.isTTY ? [] : ['--colors=off']),
  '.',
])
step('types', node, [join(modules, 'typescript', 'bin', 'tsc'), '-b'])
const report = join(root, '.cache', 'tests.json')
step('tests', node, [
  join(modules, 'vitest', 'vitest.mjs'),
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile=${report}`,
])

const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, 'utf8'))
process.stdout.write(`\n${numPassedTests} passed, ${numFailedTests} failed\n`)
if (numPassedTests === 0 || numFailedTests > 0) process.exit(1)
