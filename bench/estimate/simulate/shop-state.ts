import type { ShopClock } from './clock.ts'
import type { Equipment } from './equipment.ts'
import type { Journal } from './journal.ts'
import type { Chance } from './random.ts'
import type { SimSump } from './sump.ts'

/** A simulated shop while it runs. */
export interface SimShop {
  clock: ShopClock
  equipment: Equipment
  seasonPhase: number
  sumps: SimSump[]
  journal: Journal
  chance: Chance
}
