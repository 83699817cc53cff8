import { blur } from '../../filter/index.ts'
import { takeVerdict } from '../doubts/verdict.ts'
import type { ShopEvent } from '../events.ts'
import { bringTo } from '../passing.ts'
import { oil } from '../priors.ts'
import { newSump, type ShopEstimate, type SumpState } from '../shop-estimate.ts'
import { bias, carryOff, evaporation, scale } from '../state.ts'
import { add, charge, draw, remember, transfer } from './pouring.ts'
import { takeReading } from './read-sump.ts'
import type { RoundOffset } from './round.ts'
import { describe, guessMark } from './setup.ts'
import { runHours, standStill } from './standing-still.ts'

/** The sump of an event; one that nobody described is not there. */
export function sumpOf(shop: ShopEstimate, event: ShopEvent): SumpState | null {
  const known = shop.sumps.get(event.sump)
  if (known !== undefined) return known
  if (event.kind !== 'setup') return null
  const sump = newSump(event.spec, event.at, shop.priors)
  shop.sumps.set(event.sump, sump)
  return sump
}

/** Takes one event into its sump. */
export function takeEvent(shop: ShopEstimate, sump: SumpState, event: ShopEvent, offset: RoundOffset): void {
  switch (event.kind) {
    // What tells of the sump or of time past moves nothing at its own time.
    case 'setup':
      describe(sump, event.spec)
      break
    case 'verdict':
      takeVerdict(sump, event)
      break
    case 'idle':
      standStill(shop, sump, event)
      break
    case 'hours':
      runHours(shop, sump, event)
      break
    default:
      bringTo(shop, sump, event.at)
      happen(shop, sump, event, offset)
      sump.dataAt = event.at
  }
}

type Happening = Exclude<ShopEvent, { kind: 'setup' | 'verdict' | 'idle' | 'hours' }>

function happen(shop: ShopEstimate, sump: SumpState, event: Happening, offset: RoundOffset): void {
  switch (event.kind) {
    case 'reading':
      guessMark(sump, event.seen)
      takeReading(shop, sump, event, offset)
      break
    case 'charge':
      guessMark(sump, event.volume)
      for (const branch of sump.branches) charge(branch, sump, event)
      remember(sump, event)
      break
    case 'addition':
      for (const branch of sump.branches) add(branch, sump, event)
      remember(sump, event)
      break
    case 'drawoff':
      for (const branch of sump.branches) draw(branch, sump, event.volume)
      break
    case 'transfer':
      transfer(shop, sump, event)
      break
    case 'skim':
      for (const { belief } of sump.branches) {
        blur(belief, bias, 0.08 ** 2)
        belief.mean[bias]! -= oil.skimmed * Math.max(0, belief.mean[bias]!)
      }
      break
    case 'job':
      for (const { belief } of sump.branches) {
        blur(belief, carryOff, 0.35 ** 2)
        blur(belief, evaporation, 0.1 ** 2)
      }
      break
    case 'cleanout':
      // The sludge is out: the mark holds what it holds.
      for (const { belief } of sump.branches) blur(belief, scale, 0.05 ** 2)
      break
  }
}
