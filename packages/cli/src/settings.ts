import { existsSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { BookError } from '@sumpbook/book'
import { UsageError, type World } from './command.ts'

/** Where the book lies and where it is served. */
export interface Settings {
  /** The book's SQLite file. */
  file: string
  host: string
  port: number
}

type Name = 'data' | 'host' | 'port'

/**
 * Settings by flag, else by `SUMPBOOK_…` in the environment (or the file that `SUMPBOOK_…_FILE` names), else by
 * `sumpbook.json` in this folder, else the defaults: the folder `data`, loopback, port 7340.
 */
export function readSettings(flags: Partial<Record<Name, string | undefined>>, { env, cwd }: World): Settings {
  const config = readConfig(cwd())
  const of = (name: Name) => flags[name] ?? fromEnvironment(name, env) ?? config[name]
  const data = resolve(cwd(), of('data') ?? 'data')
  const port = Number(of('port') ?? 7340)
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new UsageError(`port: found ${of('port')}, expected a whole number from 0 to 65535`)
  }
  return {
    file: /\.(sqlite|db)$/.test(data) ? data : join(data, 'book.sqlite'),
    host: of('host') ?? '127.0.0.1',
    port,
  }
}

function fromEnvironment(name: Name, env: World['env']): string | undefined {
  const variable = `SUMPBOOK_${name.toUpperCase()}`
  const file = env[`${variable}_FILE`]
  return env[variable] ?? (file === undefined ? undefined : readFileSync(file, 'utf8').trim())
}

function readConfig(folder: string): Partial<Record<Name, string>> {
  const path = join(folder, 'sumpbook.json')
  if (!existsSync(path)) return {}
  try {
    const config = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>
    return Object.fromEntries(Object.entries(config).map(([name, value]) => [name, String(value)]))
  } catch {
    throw new BookError('refused-input', 'sumpbook.json is not JSON.', [
      { pointer: '', found: 'text that is not JSON', expected: 'an object with data, host and port' },
    ])
  }
}
