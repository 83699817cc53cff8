import type { WasteContainerDocument } from '../book-document.ts'

/**
 * Where the example shop keeps its waste. The codes are those this invented shop chose from the EU List of Waste, the terms
 * those of its invented permit.
 */
export const wasteContainers: readonly WasteContainerDocument[] = [
  {
    id: 'emulsion',
    name: 'Emulsion tank',
    stream: 'Used emulsion',
    kind: 'emulsion',
    code: '12 01 09*',
    capacity: 2000,
    density: 1,
    term: { count: 6, unit: 'months', source: 'Permit of the example shop', from: 'first' },
    place: 'Yard',
  },
  {
    id: 'oil',
    name: 'Oil drum',
    stream: 'Skimmed oil',
    kind: 'oil',
    code: '13 02 05*',
    capacity: 200,
    density: 0.9,
    term: { count: 180, unit: 'days', source: 'Permit of the example shop', from: 'first' },
    place: 'Yard',
  },
  {
    id: 'sludge',
    name: 'Sludge skip',
    stream: 'Grinding sludge',
    kind: 'sludge',
    code: '12 01 18*',
    capacity: 1000,
    density: 1.6,
    term: { count: 1, unit: 'years', source: 'Permit of the example shop', from: 'first' },
    place: 'Behind hall B',
  },
]

export type WasteId = 'emulsion' | 'oil' | 'sludge'
