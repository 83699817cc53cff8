import { type ParseArgsConfig, parseArgs } from 'node:util'
import type { Reader } from '@sumpbook/fluid'
import { UsageError } from './command.ts'

/** What every command understands. */
export const commonOptions = {
  json: { type: 'boolean', default: false },
  units: { type: 'string' },
  language: { type: 'string' },
  numbers: { type: 'string' },
  data: { type: 'string' },
  'database-url': { type: 'string' },
  schema: { type: 'string' },
} as const

/** Parses a command's own options beside the common ones. */
export const parse = <T extends NonNullable<ParseArgsConfig['options']>>(args: string[], options: T) =>
  parseArgs({ args, options: { ...commonOptions, ...options }, allowPositionals: true, strict: true })

/** @throws {UsageError} another word than the three */
export function unitsOf(given: string | undefined): Reader['units'] | undefined {
  if (given === undefined || given === 'us' || given === 'metric' || given === 'imperial') return given
  throw new UsageError(`--units: found "${given}", expected us, metric or imperial`)
}

/** @throws {UsageError} not exactly one file named */
export function oneFile(positionals: readonly string[]): string {
  const [file, ...more] = positionals
  if (file === undefined || more.length > 0) throw new UsageError(`expected one file, found ${positionals.length}`)
  return file
}
