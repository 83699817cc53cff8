import type { Litres, MgPerLitre, Percent } from '../quantities.ts'
import type { PourableWater, SumpToPour } from '../recipe/recipe.ts'

/**
 * All that the recipe of one sump needs besides what is read at it: the same object serves the phone and the server.
 * null is unknown.
 */
export interface RecipeBench {
  /** Percent per °Brix, of the fluid now in the sump. */
  brixFactor: number | null
  /** A product chart, [°Brix, percent] rising; wins over the factor. */
  brixChart: readonly (readonly [number, number])[] | null
  /** °Brix, the step of the refractometer in use. */
  resolution: number
  fillVolume: Litres | null
  capacity: Litres | null
  minVolume: Litres | null
  /** Litres out in lines and conveyor while the pumps run. */
  holdUp: Litres
  /** [mm, litres], rising. */
  dipTable: readonly (readonly [number, number])[] | null
  target: Percent | null
  band: { low: Percent; high: Percent } | null
  maxStrength: Percent
  minStrength: Percent
  class: SumpToPour['class'] | null
  waters: readonly (PourableWater & { name: string; hardness?: MgPerLitre })[]
  /** What water is carried in. */
  container: BenchContainer | null
  /** What concentrate is measured in, where the shop has something finer than its bucket. */
  measure: BenchContainer | null
}

/** A bucket or jug of the shop. */
export interface BenchContainer {
  id: string
  name: string
  capacity: Litres
  /** Litres between two marks on its wall. */
  graduation?: Litres
}
