import type { BenchBook } from '../book.ts'
import type { Chance } from '../simulate/random.ts'
import type { Water } from './contents.ts'

export const toStep = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(4))

/** A product by its sheet, and by what this lot of it really is. */
export interface Product {
  id: string
  target: number
  sheetFactor: number
  factor: number
}

export interface Refractometer {
  id: string
  /** °Brix. */
  resolution: number
  zero: number
  /** Sd of one look. */
  eye: number
}

/** What is bought and bolted to the wall: as the book has it and as it is. */
export interface Stores {
  products: Product[]
  refractometers: Refractometer[]
  /** Hardness of the tap in each week, mg/L. */
  tap: number[]
  /** Other salts beside each mg of hardness. */
  saltShare: number
  topUpWater: 'tap' | 'di'
  /** True strength over what the dial says. */
  mixer: number
  /** Hardness comes as a class between pads, or as the figure that a drop test gave. */
  hardnessBy: 'pads' | 'drops'
}

export const pads = [0, 60, 120, 240, 425, 800]
const softest = 3

export function drawStores(chance: Chance): Stores {
  let tap = Math.exp(chance.between(Math.log(50), Math.log(300)))
  return {
    products: [chance.between(1, 1.5), chance.between(1.3, 2)].map((factor, i) => ({
      id: `p${i}`,
      target: toStep(chance.between(6, 9), 0.5),
      sheetFactor: toStep(factor, 0.1),
      factor: toStep(factor, 0.1) * (1 + chance.normal(0.012)),
    })),
    refractometers: [0.1, 0.2].map((resolution, i) => ({
      id: `refractometer-${i}`,
      resolution,
      zero: chance.normal(0.04),
      eye: resolution / 2,
    })),
    tap: Array.from({ length: 32 }, () => {
      tap *= chance.factor(0.015)
      return tap
    }),
    saltShare: chance.between(0.3, 0.9),
    topUpWater: chance.happens(0.5) ? 'di' : 'tap',
    mixer: 1 + chance.normal(0.03),
    hardnessBy: chance.happens(0.5) ? 'pads' : 'drops',
  }
}

export function waterOn({ tap, saltShare }: Stores, water: 'tap' | 'di', day: number): Water {
  const hardness = water === 'di' ? softest : tap[Math.floor(day / 7)]!
  return { hardness, salts: hardness * saltShare }
}

/** The parts of the book that say what the shop has. */
export function storesInBook(stores: Stores): Pick<BenchBook, 'fluids' | 'waters' | 'instruments'> {
  const { products, refractometers, tap } = stores
  return {
    fluids: products.map(({ id, target, sheetFactor }) => ({
      id,
      name: `Product ${id}`,
      brixFactor: sheetFactor,
      maxMixStrength: 20,
      limits: { concentration: { low: target - 1.5, target, high: target + 1.5 } },
    })),
    waters: [
      { id: 'tap', name: 'Tap', kind: 'tap', hardness: toStep(tap[0]!, 5) },
      { id: 'di', name: 'Deionised', kind: 'deionised', hardness: softest },
    ],
    instruments: [
      ...refractometers.map(({ id, resolution }) => ({ id, name: id, kind: 'refractometer', resolution })),
      { id: 'pads', name: 'Hardness strips', kind: 'strip', pads },
    ],
  }
}
