import type { BenchBook, BenchSump } from '../book.ts'
import type { Chance } from './random.ts'
import { round, type Traits } from './traits.ts'

/** What the shop owns, as it really is beside what the book says of it. */
export interface Equipment {
  /** True percent per °Brix of each product; the book's are beside it. */
  trueFactors: number[]
  bookFactors: number[]
  fluids: BenchBook['fluids']
  waters: BenchBook['waters']
  /** mg/L of other salts in each water. */
  salts: number[]
  /** Yearly swing of the waters' hardness, as a share. */
  tapSwing: number
  refractometers: { id: string; resolution: number; zero: number }[]
  /** The mixer's lasting error, as a factor. */
  mixerBias: number
  /** The water this shop tops up with, by its place. */
  topUpWater: number
}

export const stripPads = [0, 25, 50, 120, 250, 425]

export function drawEquipment(chance: Chance): Equipment {
  const bookFactors = [round(chance.between(0.9, 2), 0.05), round(chance.between(0.9, 2.4), 0.05)]
  const tap = Math.round(chance.between(60, 320))
  return {
    bookFactors,
    trueFactors: bookFactors.map((factor) => factor * chance.factor(0.025)),
    fluids: bookFactors.map((brixFactor, i) => {
      const target = round(chance.between(6, 9), 0.5)
      const concentration = { low: target - 1.5, target, high: target + 2 }
      return { id: `f${i + 1}`, name: `Fluid ${i + 1}`, brixFactor, maxMixStrength: 15, limits: { concentration } }
    }),
    waters: [
      { id: 'tap', name: 'Tap', kind: 'tap', hardness: tap },
      { id: 'deionised', name: 'Deionised', kind: 'deionised', hardness: 2 },
    ],
    salts: [tap * chance.between(0.4, 1.2), 3],
    tapSwing: chance.between(0, 0.15),
    refractometers: [
      { id: 'r1', resolution: 0.2, zero: chance.normal(0.08) },
      { id: 'r2', resolution: 0.1, zero: chance.normal(0.05) },
    ],
    mixerBias: chance.factor(0.06),
    topUpWater: chance.happens(0.65) ? 0 : 1,
  }
}

/** The sump as the book has it: the plate's volume, if any, and the hold-up where somebody once measured it. */
export function sumpInBook(chance: Chance, id: string, traits: Traits, central: boolean, fluid: string): BenchSump {
  const { plateVolume, holdUp } = traits
  const sump: BenchSump = {
    id,
    name: `Machine ${id.slice(1)}`,
    kind: central ? 'central' : 'stand-alone',
    fluid,
    capacity: round(plateVolume * 1.25, 1),
  }
  if (!chance.happens(0.15)) {
    sump.fillVolume = plateVolume
    sump.minVolume = round(plateVolume * 0.4, 1)
  }
  if (chance.happens(0.5)) sump.holdUp = round(holdUp * plateVolume * chance.factor(0.2), 1)
  if (traits.usesDipstick) {
    sump.dipTable = [
      [0, 0],
      [500, round(plateVolume * 1.25, 1)],
    ]
  }
  return sump
}
