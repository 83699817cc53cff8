import type { SheetField } from '../sheet-types.ts'
import { sumpFields } from './fields.ts'
import { type Heading, readHeading } from './headings.ts'
import { fieldNamed } from './headings-words.ts'
import type { ShopUnits } from './units.ts'
import { sameName } from './words.ts'

/** A heading of a wide sheet: a machine, and what of it the column holds where the heading says so. */
export interface MachineHeading {
  /** As it stands in the heading. */
  machine: string
  /** Null where the machine stands alone. */
  of: Heading | null
}

/**
 * Reads "Mill 7", "Mill 7 Brix", "pH Mill 7", "Mill 7: level (gal)" with a machine the book or the map names.
 * Null where the heading names none of them.
 */
export function knownMachineHeading(heading: string, names: readonly string[], shop: ShopUnits): MachineHeading | null {
  const text = sameName(heading)
  for (const name of names.toSorted((a, b) => b.length - a.length)) {
    const key = sameName(name)
    if (text === key) return { machine: heading.trim(), of: null }
    for (const rest of [after(text, key), before(text, key)]) {
      const of = rest === null ? null : fieldOfMachine(heading.trim().replace(/\s+/g, ' '), rest, shop)
      if (of !== null) return { machine: name, of }
    }
  }
  return null
}

/** The same where the machine is not known yet: words before or after a field. Null where no field stands there. */
export function newMachineHeading(heading: string, shop: ShopUnits): MachineHeading | null {
  const words = heading.trim().split(/\s+/)
  for (let cut = 1; cut < words.length; cut += 1) {
    const machine = bare(words.slice(0, cut).join(' '))
    const of = sumpHeading(words.slice(cut).join(' '), shop)
    if (of !== null && machine !== '' && fieldNamed(machine) === null) return { machine, of }
  }
  for (let cut = words.length - 1; cut >= 1; cut -= 1) {
    const machine = bare(words.slice(cut).join(' '))
    const of = /\d/.test(machine) ? sumpHeading(words.slice(0, cut).join(' '), shop) : null
    if (of !== null) return { machine, of }
  }
  return null
}

/** The part that is left where the name stands at the beginning, cut from the text with its capitals. */
function after(text: string, name: string): [number, number] | null {
  return text.startsWith(name) && /^[^\p{L}\p{N}]/u.test(text.slice(name.length)) ? [name.length, text.length] : null
}

function before(text: string, name: string): [number, number] | null {
  const bared = text.replace(/[)\]}]+$/, '')
  const end = bared.length - name.length
  return end > 0 && bared.endsWith(name) && /[^\p{L}\p{N}]$/u.test(bared.slice(0, end)) ? [0, end] : null
}

function fieldOfMachine(heading: string, [from, to]: [number, number], shop: ShopUnits): Heading | null {
  return sumpHeading(heading.slice(from, to).replace(/[([{]\s*$/, ''), shop)
}

function sumpHeading(text: string, shop: ShopUnits): Heading | null {
  const heading = readHeading(text.replace(/^[\s\-–—:/,]+|[\s\-–—:/,]+$/g, ''), shop)
  return heading.field !== null && (sumpFields as readonly (SheetField | null)[]).includes(heading.field)
    ? heading
    : null
}

/** Without signs and brackets at its ends. */
const bare = (text: string) => text.replace(/^[\s([{\-–—:/,]+|[\s)\]}\-–—:/,]+$/g, '')
