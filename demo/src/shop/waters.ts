import type { WaterDocument } from '../book-document.ts'

/** The tap, and what the deionising cylinder gives. */
export const waters: readonly WaterDocument[] = [
  {
    id: 'tap',
    name: 'Tap water',
    kind: 'tap',
    hardness: 260,
    chloride: 32,
    sulfate: 46,
    nitrate: 18,
    conductivity: 0.62,
    ph: 7.6,
    costPerLitre: 0.004,
  },
  {
    id: 'deionised',
    name: 'Deionised water',
    kind: 'deionised',
    hardness: 5,
    chloride: 1,
    sulfate: 1,
    nitrate: 0.5,
    conductivity: 0.02,
    ph: 6.8,
    costPerLitre: 0.013,
  },
]

/** @throws {RangeError} no such water */
export function waterOf(id: string): WaterDocument {
  const water = waters.find((one) => one.id === id)
  if (water === undefined) throw new RangeError(`no water ${id}`)
  return water
}
