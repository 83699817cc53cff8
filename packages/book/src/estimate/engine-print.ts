import { createHash } from 'node:crypto'
import { globSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folders of this package that decide what an estimate says. */
const folders = ['estimate', 'setup', 'journal', 'schema']

let known: string | null = null

/**
 * Stands for everything that decides what the same entries come to: the sources that work it out and the runtime they run on.
 * What was worked out under another print is worked out again.
 */
export function enginePrint(): string {
  known ??= printOf([dirname(createRequire(import.meta.url).resolve('@sumpbook/fluid')), ...ownFolders()])
  return known
}

function ownFolders(): string[] {
  const root = dirname(dirname(fileURLToPath(import.meta.url)))
  return folders.map((folder) => join(root, folder))
}

function printOf(places: readonly string[]): string {
  const hash = createHash('sha256').update(`${process.version} ${process.arch}`)
  for (const place of places) {
    for (const file of globSync('**/*.ts', { cwd: place }).sort()) {
      if (!file.endsWith('.test.ts')) hash.update(file).update(readFileSync(join(place, file)))
    }
  }
  return hash.digest('hex')
}
