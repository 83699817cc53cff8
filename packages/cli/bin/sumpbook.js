#!/usr/bin/env node
// Plain JavaScript, so that an old Node.js can read it far enough to say what is needed instead.
import * as nodeModule from 'node:module'

if (Number(process.versions.node.split('.')[0]) < 24) {
  process.stderr.write(
    `Sumpbook needs Node.js 24 or newer; this is ${process.versions.node}. Run it by npx from its folder.\n`,
  )
  process.exit(1)
}
nodeModule.enableCompileCache?.()
const { main } = await import('../src/main.ts')
process.exitCode = await main(process.argv.slice(2), process)
