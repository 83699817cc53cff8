import type { Water } from '../../schema/things/index.ts'
import { plain } from './words.ts'

/** What shops call their waters; common practice. */
const kinds: Record<NonNullable<Water['kind']>, string[]> = {
  tap: [
    'tap',
    'tap water',
    'city',
    'city water',
    'mains',
    'leitungswasser',
    'stadtwasser',
    'trinkwasser',
    'agua de red',
    'grifo',
    'red',
  ],
  well: ['well', 'well water', 'brunnen', 'brunnenwasser', 'pozo', 'agua de pozo'],
  softened: ['soft', 'softened', 'soft water', 'softened water', 'enthartet', 'weichwasser', 'ablandada'],
  'reverse-osmosis': [
    'ro',
    'r o',
    'ro water',
    'reverse osmosis',
    'osmose',
    'osmosewasser',
    'umkehrosmose',
    'osmosis',
    'osmosis inversa',
  ],
  deionised: [
    'di',
    'd i',
    'di water',
    'deionised',
    'deionized',
    'demin',
    've',
    've wasser',
    'vollentsalzt',
    'desionizada',
    'desmineralizada',
  ],
}

/** The water a cell names by id or name, or by its kind where the shop has one water of that kind; null where none. */
export function waterNamed(text: string, waters: readonly Water[]): Water | null {
  const word = plain(text)
  const byName = waters.filter(({ id, name }) => plain(id) === word || plain(name) === word)
  if (byName.length === 1) return byName[0]!
  const ofKind = waters.filter(({ kind }) => kind !== undefined && kinds[kind].includes(word))
  return byName.length === 0 && ofKind.length === 1 ? ofKind[0]! : null
}
