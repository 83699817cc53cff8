import { existsSync, readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { BookError, defaultSchema, type StorePlace } from '@sumpbook/book'
import { knownNumbers, languages, type Speech } from '@sumpbook/fluid'
import { type LogLevel, logLevels } from '@sumpbook/server/log-levels'
import { UsageError, type World } from './command.ts'

/** Where the book lies and where it is served. */
export interface Settings {
  place: StorePlace
  /** The folder of what lies beside a book in files of its own: attachments, copies made before an upgrade. */
  folder: string
  host: string
  port: number
  /** How much is logged; null: every request where nobody sits at the log, else only what nobody foresaw. */
  log: LogLevel | null
  /** Whether accounts are asked for on loopback as well. */
  accounts: boolean
  /** Where people reach the book, where that is settled: `https://book.example`. */
  publicUrl: string | null
  /** What to speak https with by itself, PEM; null: plain http, or a proxy does. */
  tls: { cert: string; key: string } | null
  /** Signs cookies; null: the book keeps one of its own. */
  secret: string | null
  /** A provider of OpenID Connect. */
  provider: { issuer: string; clientId: string; clientSecret: string; name: string } | null
}

type Name =
  | 'data'
  | 'databaseUrl'
  | 'schema'
  | 'host'
  | 'port'
  | 'log'
  | 'language'
  | 'numbers'
  | 'accounts'
  | 'publicUrl'
  | 'certificate'
  | 'certificateKey'
  | 'secret'
  | 'oidcIssuer'
  | 'oidcClientId'
  | 'oidcClientSecret'
  | 'oidcName'
export type Flags = {
  [name in 'data' | 'schema' | 'host' | 'port' | 'log' | 'language' | 'numbers' | 'certificate']?: string | undefined
} & {
  'database-url'?: string | undefined
  'public-url'?: string | undefined
  'certificate-key'?: string | undefined
  accounts?: boolean | undefined
}
type Source = (name: Name) => string | undefined

/**
 * Settings by flag, else by `SUMPBOOK_…` in the environment (or the file that `SUMPBOOK_…_FILE` names), else by
 * `sumpbook.json` in this folder, else the defaults: the folder `data`, loopback, port 7340.
 */
export function readSettings(flags: Flags, world: World): Settings {
  const { cwd } = world
  const given: Source = (name) => {
    if (name === 'databaseUrl') return flags['database-url']
    if (name === 'publicUrl') return flags['public-url']
    if (name === 'certificateKey') return flags['certificate-key']
    if (name === 'accounts') return flags.accounts === true ? 'yes' : undefined
    return name in flags ? (flags as { [flag in Name]?: string | undefined })[name] : undefined
  }
  const sources = sourcesOf(given, world)
  const of = firstOf(sources)
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
    log: logOf(of('log')),
    accounts: yesOrNo('accounts', of('accounts') ?? 'no'),
    publicUrl: publicUrlOf(of('publicUrl')),
    tls: tlsOf(of, cwd()),
    secret: secretOf(of('secret')),
    provider: providerOf(of),
  }
}

/**
 * In what language it is said and with what signs in figures, from the same places; English without any.
 *
 * @throws {UsageError} a language that is not spoken here, or figures that no standard knows
 */
export function readSpeech(flags: Pick<Flags, 'language' | 'numbers'>, world: World): Speech {
  const of = firstOf(sourcesOf((name) => (flags as { [flag in Name]?: string | undefined })[name], world))
  const [asked = 'en', figures] = [of('language'), of('numbers')]
  const language = languages.find((one) => one === asked)
  if (language === undefined) throw new UsageError(`language: found "${asked}", expected ${languages.join(', ')}`)
  const numbers = knownNumbers(figures ?? language)
  if (numbers === null) throw new UsageError(`numbers: found "${figures}", expected a language tag such as de-CH`)
  return { language, numbers }
}

const sourcesOf = (given: Source, { env, cwd }: World): Source[] => {
  const config = readConfig(cwd())
  return [given, (name) => fromEnvironment(name, env), (name) => config[name]]
}

const firstOf =
  (sources: readonly Source[]): Source =>
  (name) =>
    sources.map((source) => source(name)).find((value) => value !== undefined)

/** Only somebody at this machine needs no account, and only where no proxy lets others through to it. */
export const needsAccounts = ({
  accounts,
  publicUrl,
  host,
}: Pick<Settings, 'accounts' | 'publicUrl' | 'host'>): boolean =>
  accounts || publicUrl !== null || !(host === 'localhost' || host === '::1' || /^127(\.\d+){3}$/.test(host))

function yesOrNo(name: Name, text: string): boolean {
  if (['yes', 'true', '1'].includes(text)) return true
  if (['no', 'false', '0', ''].includes(text)) return false
  throw new UsageError(`${name}: found "${text}", expected yes or no`)
}

function logOf(text: string | undefined): LogLevel | null {
  if (text === undefined || text === '') return null
  const level = logLevels.find((one) => one === text)
  if (level === undefined) throw new UsageError(`log: found "${text}", expected ${logLevels.join(', ')}`)
  return level
}

function publicUrlOf(text: string | undefined): string | null {
  if (text === undefined || text === '') return null
  const url = URL.parse(text)
  if (url === null || !/^https?:$/.test(url.protocol) || url.pathname !== '/') {
    throw new UsageError(`public URL: found "${text}", expected one like https://book.example, without a path`)
  }
  return url.origin
}

/** A certificate without its key, or for no name that people type, is a slip that is better named at once. */
function tlsOf(of: Source, folder: string): Settings['tls'] {
  const [certificate, key] = [of('certificate') ?? '', of('certificateKey') ?? '']
  if (certificate === '' && key === '') return null
  if (certificate === '' || key === '') throw new UsageError('--certificate and --certificate-key go together')
  if (publicUrlOf(of('publicUrl'))?.startsWith('https:') !== true) {
    throw new UsageError(
      '--certificate needs --public-url with what people type, such as https://book.shop.lan:7340: the name must be one of the certificate’s',
    )
  }
  return { cert: readPem(folder, certificate, 'CERTIFICATE'), key: readPem(folder, key, 'PRIVATE KEY') }
}

function readPem(folder: string, name: string, what: string): string {
  const file = resolve(folder, name)
  let text: string
  try {
    text = readFileSync(file, 'utf8')
  } catch {
    throw new UsageError(`certificate: found no file at ${file} that can be read`)
  }
  if (!text.includes(`${what}-----`)) throw new UsageError(`certificate: ${file} holds no PEM text of a ${what}`)
  return text
}

/** Shorter ones are guessed; the message does not repeat it. */
function secretOf(text: string | undefined): string | null {
  if (text === undefined || text === '') return null
  if (text.length < 32)
    throw new UsageError('secret: expected at least 32 characters, as `openssl rand -base64 32` makes them')
  return text
}

function providerOf(of: Source): Settings['provider'] {
  const issuer = of('oidcIssuer')
  if (issuer === undefined || issuer === '') return null
  const [clientId, clientSecret] = [of('oidcClientId'), of('oidcClientSecret')]
  if (clientId === undefined || clientSecret === undefined) {
    throw new UsageError(
      'OpenID Connect: an issuer needs SUMPBOOK_OIDC_CLIENT_ID and SUMPBOOK_OIDC_CLIENT_SECRET_FILE as well',
    )
  }
  if (publicUrlOf(of('publicUrl')) === null) {
    throw new UsageError('OpenID Connect: the provider must know where to send people back: give --public-url')
  }
  return { issuer, clientId, clientSecret, name: of('oidcName') ?? URL.parse(issuer)?.host ?? issuer }
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
        expected: 'an object with data, databaseUrl, schema, host, port, language, numbers, accounts and publicUrl',
      },
    ])
  }
}
