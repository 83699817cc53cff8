import type { BookDocument } from '../book-document.ts'

export const bucket = { id: 'bucket', name: 'Bucket 12 L', capacity: 12, graduation: 1 }
export const containers: BookDocument['containers'] = [
  bucket,
  { id: 'jug', name: 'Jug 1 L', capacity: 1, graduation: 0.1 },
]

export const mixer: BookDocument['mixers'][number] = {
  id: 'mixer',
  name: 'Mixing station',
  settings: [
    [1, 1.5],
    [2, 3],
    [3, 4.5],
    [4, 6],
    [5, 8],
    [6, 10],
    [7, 12],
    [8, 15],
  ],
}

export const refractometer = {
  id: 'refractometer',
  name: 'Refractometer',
  kind: 'refractometer',
  resolution: 0.2,
  range: [0, 32] as [number, number],
  compensated: true,
}
/** Pads in mg/L as CaCO3. */
export const hardnessStrips = {
  id: 'hardness-strips',
  name: 'Hardness strips',
  kind: 'strip',
  pads: [0, 25, 50, 120, 250, 425],
}
/** Pads in mg/L as NO2. */
export const nitriteStrips = {
  id: 'nitrite-strips',
  name: 'Nitrite strips',
  kind: 'strip',
  pads: [0, 1, 5, 10, 20, 40, 80],
}
export const phMeter = {
  id: 'ph-meter',
  name: 'pH pocket meter',
  kind: 'ph-meter',
  resolution: 0.1,
  range: [0, 14] as [number, number],
  compensated: true,
}
export const slides = { id: 'slides', name: 'Dip slides', kind: 'dip-slide' }
export const instruments: BookDocument['instruments'] = [refractometer, hardnessStrips, nitriteStrips, phMeter, slides]

/** In the hose of the central system. */
export const hoseMeter = { id: 'hose-meter', name: 'Hose meter, central system', litresPerCount: 1, sump: 'central' }
export const meters: BookDocument['meters'] = [hoseMeter]
