import type { SumpNow } from '../api/types.ts'

type Named = Pick<SumpNow, 'sump' | 'name'>

/**
 * The sump that a code names: the address on a label, a sump's id as printed under it, or its name as one types it. Null where no sump, or
 * more than one, can be meant.
 */
export function findStop<Stop extends Named>(text: string, stops: readonly Stop[]): Stop | null {
  const typed = folded(idOfAddress(text.trim()) ?? text)
  if (typed === '') return null
  const exact = calledSo(typed, stops)
  if (exact.length > 0) return exact.length === 1 ? exact[0]! : null
  const near = matchStops(text, stops)
  return near.length === 1 ? near[0]! : null
}

const calledSo = <Stop extends Named>(typed: string, stops: readonly Stop[]) =>
  stops.filter(({ sump, name }) => folded(sump) === typed || folded(name) === typed)

/**
 * Whether a text that came into a field as fast as a scanner types is a label's code: an address of the round, or a sump's whole id or name. Digits
 * alone are a figure, whatever a sump is called.
 */
export const isCode = (text: string, stops: readonly Named[]): boolean =>
  address.test(text) || (/\p{L}/u.test(text) && calledSo(folded(text), stops).length > 0)

/** The sumps whose id or name has every word of what was typed. */
export function matchStops<Stop extends Named>(text: string, stops: readonly Stop[]): Stop[] {
  const words = text
    .trim()
    .split(/\s+/)
    .map(folded)
    .filter((word) => word !== '')
  return words.length === 0
    ? []
    : stops.filter(({ sump, name }) => words.every((word) => folded(`${name} ${sump}`).includes(word)))
}

const address = /\/(?:round|sumps)\/([^/?#\s]+)/

function idOfAddress(text: string): string | null {
  const found = address.exec(text)?.[1]
  if (found === undefined) return null
  try {
    return decodeURIComponent(found)
  } catch (error) {
    if (error instanceof URIError) return null
    throw error
  }
}

/** Without capitals, accents and what stands between letters: "Fräse 7", "frase7". */
const folded = (text: string) =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '')
