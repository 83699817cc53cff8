import { inLanguage, message, say, speech } from '@sumpbook/fluid'
import type { z } from 'zod'
import type { Fault } from '../errors.ts'

type Issue = z.core.$ZodIssue
type Path = readonly PropertyKey[]

/**
 * Every fault of a refused value, with what stood at its place. Pointers are JSON Pointers, RFC 6901.
 *
 * @param unit of limits, with the blank before it
 */
export function faultsOf(error: z.ZodError, input: unknown, at = '', unit = ''): Fault[] {
  return error.issues.flatMap((issue) => faultsOfIssue(issue, input, at, unit))
}

/** A path of keys as a JSON Pointer. */
export const pointerOf = (path: Path): string =>
  path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')

/** What was found, short enough to read aloud: `-3`, `"19,"`, `nothing`, `a list`. */
export function sayFound(value: unknown): string {
  if (value === undefined) return say('nothing')
  if (Array.isArray(value)) return say('a list of {length}', { length: String(value.length) })
  if (typeof value === 'object' && value !== null) return sayShort(JSON.stringify(value))
  return sayShort(typeof value === 'string' ? JSON.stringify(value) : String(value))
}

const sayShort = (text: string) => (text.length > 60 ? `${text.slice(0, 57)}…` : text)

function faultsOfIssue(issue: Issue, input: unknown, at: string, unit: string): Fault[] {
  const found = valueAt(input, issue.path)
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      pointer: at + pointerOf([...issue.path, key]),
      found: say('the field "{name}"', { name: key }),
      expected: say('no such field here'),
    }))
  }
  if (issue.code === 'invalid_union') {
    const branch = issue.errors.find((issues) => issues.length > 0 && !issues.some(isOfWrongType))
    if (branch !== undefined) {
      return branch.flatMap((inner) => faultsOfIssue(inner, found, at + pointerOf(issue.path), unit))
    }
  }
  return [{ pointer: at + pointerOf(issue.path), found: sayFound(found), expected: expectedOf(issue, unit) }]
}

/** A branch of a union that another type of value was meant for. */
const isOfWrongType = (issue: Issue) =>
  issue.path.length === 0 && (issue.code === 'invalid_type' || issue.code === 'unrecognized_keys')

function expectedOf(issue: Issue, unit: string): string {
  switch (issue.code) {
    case 'invalid_type':
      return article(issue.expected)
    case 'too_small':
      return sayBound(issue.inclusive ? 'atLeast' : 'above', `${issue.minimum}`, { origin: issue.origin, unit })
    case 'too_big':
      return sayBound(issue.inclusive ? 'atMost' : 'below', `${issue.maximum}`, { origin: issue.origin, unit })
    case 'invalid_value':
      return issue.values.length === 1
        ? sayFound(issue.values[0])
        : say('one of {values}', { values: issue.values.map((value) => String(value)).join(', ') })
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? say('one of {values}', { values: issue.options.map(String).join(', ') })
        : told(issue.message)
    default:
      return told(issue.message)
  }
}

/** A schema's own words, where they are in the catalogues; they may hold braces that are no blanks. */
const told = (words: string): string => inLanguage(speech().language, words)

type Bound = 'atLeast' | 'above' | 'atMost' | 'below'

const numberBounds: Record<Bound, string> = {
  atLeast: message('at least {bound}'),
  above: message('above {bound}'),
  atMost: message('at most {bound}'),
  below: message('below {bound}'),
}
const textBounds: Record<Bound, string> = {
  atLeast: message('text of at least {bound} characters'),
  above: message('text of above {bound} characters'),
  atMost: message('text of at most {bound} characters'),
  below: message('text of below {bound} characters'),
}
const listBounds: Record<Bound, string> = {
  atLeast: message('a list of at least {bound}'),
  above: message('a list of above {bound}'),
  atMost: message('a list of at most {bound}'),
  below: message('a list of below {bound}'),
}

function sayBound(end: Bound, bound: string, { origin, unit }: { origin: string; unit: string }): string {
  if (origin === 'string') return say(textBounds[end], { bound })
  if (origin === 'array') return say(listBounds[end], { bound })
  return say(numberBounds[end], { bound: `${bound}${unit}` })
}

const types: Readonly<Record<string, string>> = {
  array: message('a list'),
  tuple: message('a list'),
  string: message('text'),
  boolean: message('true or false'),
  number: message('a number'),
  object: message('an object'),
}

function article(type: string): string {
  const words = types[type]
  if (words !== undefined) return say(words)
  return /^[aeiou]/.test(type) ? `an ${type}` : `a ${type}`
}

function valueAt(input: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    input,
  )
}
