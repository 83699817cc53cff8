import type { z } from 'zod'
import type { Fault } from '../errors.ts'

type Issue = z.core.$ZodIssue
type Path = readonly PropertyKey[]

/** Every fault of a refused value, with what stood at its place. Pointers are JSON Pointers, RFC 6901. */
export function faultsOf(error: z.ZodError, input: unknown, at = ''): Fault[] {
  return error.issues.flatMap((issue) => faultsOfIssue(issue, input, at))
}

/** A path of keys as a JSON Pointer. */
export const pointerOf = (path: Path): string =>
  path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')

/** What was found, short enough to read aloud: `-3`, `"19,"`, `nothing`, `a list`. */
export function sayFound(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return sayShort(JSON.stringify(value))
  return sayShort(typeof value === 'string' ? JSON.stringify(value) : String(value))
}

const sayShort = (text: string) => (text.length > 60 ? `${text.slice(0, 57)}…` : text)

function faultsOfIssue(issue: Issue, input: unknown, at: string): Fault[] {
  const found = valueAt(input, issue.path)
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      pointer: at + pointerOf([...issue.path, key]),
      found: `the field "${key}"`,
      expected: 'no such field here',
    }))
  }
  if (issue.code === 'invalid_union') {
    const branch = issue.errors.find((issues) => issues.length > 0 && !issues.some(isOfWrongType))
    if (branch !== undefined) {
      return branch.flatMap((inner) => faultsOfIssue(inner, found, at + pointerOf(issue.path)))
    }
  }
  return [{ pointer: at + pointerOf(issue.path), found: sayFound(found), expected: expectedOf(issue) }]
}

/** A branch of a union that another type of value was meant for. */
const isOfWrongType = (issue: Issue) =>
  issue.path.length === 0 && (issue.code === 'invalid_type' || issue.code === 'unrecognized_keys')

function expectedOf(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return article(issue.expected)
    case 'too_small':
      return sayBound(issue.inclusive ? 'at least' : 'above', issue.minimum, issue.origin)
    case 'too_big':
      return sayBound(issue.inclusive ? 'at most' : 'below', issue.maximum, issue.origin)
    case 'invalid_value':
      return issue.values.length === 1
        ? sayFound(issue.values[0])
        : `one of ${issue.values.map((value) => String(value)).join(', ')}`
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? `one of ${issue.options.map(String).join(', ')}`
        : issue.message
    default:
      return issue.message
  }
}

function sayBound(words: string, bound: number | bigint, origin: string): string {
  if (origin === 'string') return `text of ${words} ${bound} characters`
  if (origin === 'array') return `a list of ${words} ${bound}`
  return `${words} ${bound}`
}

function article(type: string): string {
  if (type === 'array' || type === 'tuple') return 'a list'
  if (type === 'string') return 'text'
  if (type === 'boolean') return 'true or false'
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
