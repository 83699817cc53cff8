import { existsSync, readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { BookError, defaultSchema, type StorePlace } from '@sumpbook/book'
import { UsageError, type World } from './command.ts'

/** Where the book lies and where it is served. */
export interface Settings {
  place: StorePlace
  /** The folder of what lies beside a book in files of its own: attachments, copies made before an upgrade. */
  folder: string
  host: string
  port: number
}

type Name = 'data' | 'databaseUrl' | 'schema' | 'host' | 'port'
export type Flags = { [name in Name]?: string | undefined } & { 'database-url'?: string | undefined }
type Source = (name: Name) => string | undefined

/**
 * Settings by flag, else by `SUMPBOOK_…` in the environment (or the file that `SUMPBOOK_…_FILE` names), else by
 * `sumpbook.json` in this folder, else the defaults: the folder `data`, loopback, port 7340.
 */
export function readSettings(flags: Flags, { env, cwd }: World): Settings {
  const config = readConfig(cwd())
  const given: Source = (name) => (name === 'databaseUrl' ? flags['database-url'] : flags[name])
  const sources: Source[] = [given, (name) => fromEnvironment(name, env), (name) => config[name]]
  const of: Source = (name) => sources.map((source) => source(name)).find((value) => value !== undefined)
  const data = resolve(cwd(), of('data') ?? 'data')
  const port = Number(of('port') ?? 7340)
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new UsageError(`port: found ${of('port')}, expected a whole number from 0 to 65535`)
  }
  if (given('data') !== undefined && given('databaseUrl') !== undefined) {
    throw new UsageError('--data and --database-url name two places for one book')
  }
  // Of folder and database the one that is told nearer to the command counts; told together, the database.
  const nearest = sources.find((source) => source('data') !== undefined || source('databaseUrl') !== undefined)
  const url = nearest?.('databaseUrl')
  const place = url === undefined ? filePlace(data) : databasePlace(url, of('schema'))
  return {
    place,
    folder: place.kind === 'file' ? dirname(place.file) : data,
    host: of('host') ?? '127.0.0.1',
    port,
  }
}

/** A folder with a book in it, or the book's file itself. */
export const filePlace = (data: string): StorePlace => ({
  kind: 'file',
  file: /\.(sqlite|db)$/.test(data) ? data : join(data, 'book.sqlite'),
})

/** @throws {UsageError} an address or a schema that is none */
export function databasePlace(url: string, schema: string = defaultSchema): StorePlace {
  if (!isDatabaseUrl(url) || !URL.canParse(url)) {
    throw new UsageError('database URL: expected one like postgresql://user@host:5432/database')
  }
  if (!/^[a-z_][a-z0-9_]{0,62}$/.test(schema)) {
    throw new UsageError(`schema: found "${schema}", expected small letters, digits and _, at most 63`)
  }
  return { kind: 'postgres', url, schema }
}

export const isDatabaseUrl = (text: string): boolean => /^postgres(ql)?:\/\//.test(text)

function fromEnvironment(name: Name, env: World['env']): string | undefined {
  const variable = `SUMPBOOK_${name.replace(/[A-Z]/g, (letter) => `_${letter}`).toUpperCase()}`
  const file = env[`${variable}_FILE`]
  if (env[variable] !== undefined || file === undefined) return env[variable]
  try {
    return readFileSync(file, 'utf8').trim()
  } catch {
    throw new UsageError(`${variable}_FILE: found no file at ${file} that can be read`)
  }
}

function readConfig(folder: string): { [name in Name]?: string } {
  const path = join(folder, 'sumpbook.json')
  if (!existsSync(path)) return {}
  try {
    const config = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>
    return Object.fromEntries(Object.entries(config).map(([name, value]) => [name, String(value)]))
  } catch {
    throw new BookError('refused-input', 'sumpbook.json is not JSON.', [
      {
        pointer: '',
        found: 'text that is not JSON',
        expected: 'an object with data, databaseUrl, schema, host and port',
      },
    ])
  }
}
