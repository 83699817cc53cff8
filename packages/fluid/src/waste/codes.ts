import type { CautionId } from '../cautions/index.ts'

/** What a waste container holds, as far as its balance with the sumps goes. */
export type WasteKind = 'emulsion' | 'oil' | 'sludge' | 'rinse' | 'other'

/** An entry of a list of waste, offered to choose from. */
export interface WasteCode {
  /** As the list writes it, `*` where it is hazardous. */
  code: string
  /** In short, in our own words. */
  words: string
  list: string
  tag: 'read' | 'from memory'
}

const list = 'EU List of Waste (2000/532/EC), 12 01'

/**
 * Codes that a shop's waste of coolant may have. Which one it has is for the shop, its carrier and its authority to say: nothing here follows
 * from a fluid's class.
 *
 * Source: 2000/532/EC; other lists hold elsewhere, and any code can be typed.
 */
export const wasteCodes: readonly WasteCode[] = [
  { code: '12 01 08*', words: 'machining emulsions and solutions with halogens', list, tag: 'read' },
  { code: '12 01 09*', words: 'machining emulsions and solutions without halogens', list, tag: 'read' },
  { code: '12 01 10*', words: 'synthetic machining oils', list, tag: 'read' },
  { code: '12 01 14*', words: 'machining sludges with hazardous substances', list, tag: 'read' },
  { code: '12 01 18*', words: 'metal sludge from grinding, honing and lapping, with oil', list, tag: 'read' },
]

/** A code as lists write it: "120109*" and "12.01.09 *" are "12 01 09*"; what is no six digits stays as it was typed. */
export function plainCode(code: string): string {
  const [, first, second, third, star] = /^\s*(\d\d)[\s.]*(\d\d)[\s.]*(\d\d)\s*(\*?)\s*$/.exec(code) ?? []
  return first === undefined ? code.trim() : `${first} ${second} ${third}${star}`
}

/** What to mind about a container's waste, and where halogens are presumed to be hazardous. */
export interface WasteChosen {
  kind: WasteKind
  /** Null where none was chosen. */
  code: string | null
  /** Whether the shop is under the rules of the United States. */
  isUs: boolean
}

/**
 * The cautions that a container's code and kind ask for.
 *
 * @example codeCautions({ kind: 'emulsion', code: '12 01 10*', isUs: false }) // ['wasteSyntheticCode', 'wasteApart', 'noDrain']
 */
export function codeCautions({ kind, code, isUs }: WasteChosen): CautionId[] {
  const isWaterMixed = kind === 'emulsion' || kind === 'rinse'
  const plain = code === null ? null : plainCode(code).replace('*', '')
  const ids: CautionId[] = []
  if (plain === null) ids.push('wasteCodeOpen')
  if (isWaterMixed && plain === '12 01 10') ids.push('wasteSyntheticCode')
  if (isUs && (isWaterMixed || kind === 'oil')) ids.push('wasteHalogens')
  return [...ids, 'wasteApart', 'noDrain']
}
