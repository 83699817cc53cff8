import type { BenchSump } from '../book.ts'
import { instantOf, type ShopClock, stepsPerDay, truthSteps } from './clock.ts'
import type { Equipment } from './equipment.ts'
import type { Chance } from './random.ts'
import type { Losses } from './rates.ts'
import { concentrationOf, emptyTank, hardnessOf, type Pour, pass, pour, type Tank, volumeOf } from './tank.ts'
import type { Traits } from './traits.ts'

/** Half-hourly course of a sump: what stood at the beginning of each step. */
export interface Course {
  volume: Float64Array
  concentration: Float64Array
  hardness: Float64Array
}

/** One sump of the simulated shop. */
export interface SimSump {
  id: string
  place: number
  inBook: BenchSump
  traits: Traits
  losses: Losses
  chance: Chance
  tank: Tank
  /** The product now in use, by its place. */
  product: number
  sludge: number
  meterCount: number
  nextStripDay: number
  nextTitrationDay: number
  nextSkimDay: number
  /** Percent that was last shown, as the crew takes it. */
  lastShown: number | null
  course: Course
}

export function fillAtStart(sump: Omit<SimSump, 'tank' | 'course'>, equipment: Equipment): Tank {
  const { chance, traits, product } = sump
  const tank = emptyTank(equipment.trueFactors.length)
  const { target } = equipment.fluids[product]!.limits.concentration
  const cycles = traits.startsWithCharge ? 1 : chance.between(1, 3)
  const share = traits.startsWithCharge ? 0.08 : chance.between(0.85, 1)
  const first: Pour = {
    volume: traits.markVolume * share,
    strength: Math.max(3, target + chance.normal(1)),
    product: traits.startsWithCharge ? 1 - product : product,
    hardness: equipment.waters[0]!.hardness * cycles,
    salts: equipment.salts[0]! * cycles,
  }
  pour(tank, first)
  return tank
}

export const emptyCourse = (): Course => ({
  volume: new Float64Array(truthSteps),
  concentration: new Float64Array(truthSteps),
  hardness: new Float64Array(truthSteps),
})

export function writeCourse({ course, tank }: SimSump, step: number): void {
  course.volume[step] = volumeOf(tank)
  course.concentration[step] = concentrationOf(tank)
  course.hardness[step] = hardnessOf(tank)
}

/** What half an hour does, with its losses taken from the sump's own course of losses. */
export function letPass(sump: SimSump, step: number): void {
  const { tank, losses, traits } = sump
  const days = 1 / stepsPerDay
  pass(tank, { evaporated: losses.evaporated[step]!, carried: losses.carried[step]!, days }, traits.chemistry)
  tank.oil += traits.oilADay * days
  sump.sludge += traits.sludgeADay * days
}

/** Litres that the eye sees, in litres of the plate: lines empty it, sludge feigns it, the plate scales it. */
export function seenVolume({ tank, traits, sludge, losses }: SimSump, step: number): number {
  const out = losses.running[step] === 1 ? traits.holdUp * traits.markVolume : 0
  return Math.max(0, ((volumeOf(tank) - out + sludge) * traits.plateVolume) / traits.markVolume)
}

/** °Brix that a faultless refractometer would show. */
export function brixOf({ tank }: SimSump, { trueFactors }: Equipment): number {
  const volume = Math.max(volumeOf(tank), 1e-9)
  const strength = tank.concentrates.reduce((sum, litres, i) => sum + (100 * litres) / volume / trueFactors[i]!, 0)
  const minerals = (tank.hardness + tank.salts) / volume
  return strength + (0.12 * minerals) / 1000 + tank.oil
}

export const timeText = (clock: ShopClock, step: number, minute: number): string =>
  new Date(instantOf(clock, step) + minute * 60_000).toISOString()
