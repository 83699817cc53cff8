import type { ShopEstimate } from '@sumpbook/fluid'
import type { Things } from '../setup/things.ts'
import type { ShopClock } from './shop-clock.ts'
import type { Translation } from './translation.ts'

/** Where a shop has come to at an instant, with everything needed to speak of it. */
export interface ShopStanding<S = ShopEstimate> {
  shop: S
  memory: Translation
  /** As they are at the instant. */
  things: Things
  clock: ShopClock
  /** Milliseconds since 1970-01-01 UTC. */
  ms: number
}
