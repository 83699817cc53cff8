import type { Fault } from '../errors.ts'
import { pointerOf } from './faults.ts'

/** Lists in lists, objects in objects: deeper than this nobody writes by hand or by program. */
export const deepest = 100

/**
 * What JSON can spell and its canonical form (RFC 8785) cannot hold: half a character (a lone surrogate, `"\ud800"`), a number beyond all
 * numbers (`1e400`), and nesting without end.
 */
export function withoutCanonicalForm(value: unknown, at = '', depth = 0): Fault[] {
  if (typeof value === 'string') return value.isWellFormed() ? [] : [halfAt(at)]
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return [{ pointer: at, found: 'a number too large to be kept', expected: 'at most 1.7e308' }]
  }
  if (typeof value !== 'object' || value === null) return []
  if (depth === deepest) {
    return [
      { pointer: at, found: `more than ${deepest} lists or objects in each other`, expected: `at most ${deepest}` },
    ]
  }
  return Object.entries(value).flatMap(([key, part]) => {
    const pointer = at + pointerOf([key.toWellFormed()])
    return key.isWellFormed() ? withoutCanonicalForm(part, pointer, depth + 1) : [halfAt(pointer)]
  })
}

const halfAt = (pointer: string): Fault => ({ pointer, found: 'half a character', expected: 'whole characters' })
