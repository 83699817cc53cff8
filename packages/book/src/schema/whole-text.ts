import type { Fault } from '../errors.ts'
import { pointerOf } from './faults.ts'

/**
 * Texts that hold half a character (a lone surrogate): JSON can spell one (`"\ud800"`), but neither its canonical form nor UTF-8
 * can hold it.
 */
export function halfCharacters(value: unknown, at = ''): Fault[] {
  if (typeof value === 'string') return value.isWellFormed() ? [] : [faultAt(at)]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, part]) => {
    const pointer = at + pointerOf([key.toWellFormed()])
    return key.isWellFormed() ? halfCharacters(part, pointer) : [faultAt(pointer)]
  })
}

const faultAt = (pointer: string): Fault => ({ pointer, found: 'half a character', expected: 'whole characters' })
