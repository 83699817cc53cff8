import type { FluidDocument } from '../book-document.ts'

/** The invented fluids of the example shop; none is a product, and their limits are no advice for any. */
export const fluids: readonly FluidDocument[] = [
  {
    id: 'blue-40',
    name: 'Blue soluble 40',
    class: 'soluble-oil',
    brixFactor: 1,
    minTopUp: 0,
    maxMixStrength: 15,
    neatAllowed: false,
    unsuitedMetals: ['magnesium'],
    limits: {
      concentration: { low: 6, target: 7.5, high: 9 },
      ph: { low: 8.6, high: 9.6 },
      hardness: { low: 100, high: 400 },
      bacteria: { high: 1_000_000 },
      trampOil: { high: 2 },
    },
    pricePerLitre: 4.9,
    shelfLifeDays: 365,
    density: 0.95,
    stock: { packSize: 200, leadDays: 5, leadSd: 2, orderCost: 60, holdingPercent: 20, service: 95 },
  },
  {
    id: 'grey-25',
    name: 'Grey semi 25',
    class: 'semi-synthetic',
    brixChart: [
      [0, 0],
      [2, 2.9],
      [4, 6],
      [6, 9.3],
      [8, 12.8],
      [10, 16.5],
    ],
    minTopUp: 0,
    maxMixStrength: 15,
    neatAllowed: false,
    unsuitedMetals: ['magnesium'],
    limits: {
      concentration: { low: 6.5, target: 8, high: 9.5 },
      ph: { low: 8.7, high: 9.5 },
      hardness: { low: 80, high: 450 },
      bacteria: { high: 1_000_000 },
      trampOil: { high: 2 },
    },
    pricePerLitre: 6.4,
    shelfLifeDays: 365,
    density: 1.01,
    stock: { packSize: 200, leadDays: 5, leadSd: 2, orderCost: 60, holdingPercent: 20, service: 95 },
  },
  {
    id: 'clear-10',
    name: 'Clear synthetic 10',
    class: 'synthetic',
    brixFactor: 2.4,
    minTopUp: 0,
    maxMixStrength: 10,
    neatAllowed: false,
    unsuitedMetals: ['magnesium', 'copper'],
    limits: {
      concentration: { low: 3.5, target: 5, high: 6.5 },
      ph: { low: 8.7, high: 9.6 },
      hardness: { low: 0, high: 500 },
      bacteria: { high: 1_000_000 },
      trampOil: { high: 1 },
    },
    pricePerLitre: 7.8,
    shelfLifeDays: 540,
    density: 1.07,
  },
  {
    id: 'oil-22',
    name: 'Straight oil 22',
    class: 'straight-oil',
    pricePerLitre: 3.6,
    shelfLifeDays: 730,
    density: 0.87,
  },
]

/** @throws {RangeError} no such fluid */
export function fluidOf(id: string): FluidDocument {
  const fluid = fluids.find((one) => one.id === id)
  if (fluid === undefined) throw new RangeError(`no fluid ${id}`)
  return fluid
}
