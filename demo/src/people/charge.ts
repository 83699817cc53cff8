import { dayHourOf } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { toStep, typedNumber } from '../simulate/steps.ts'
import { advance, type SumpRun } from '../simulate/sump-run.ts'
import { takeOut } from '../simulate/sump-truth.ts'
import { takeInMix } from './pour.ts'
import { markOn } from './story.ts'

/** Litres that stay in corners and lines when a sump is emptied, by the book's measure. */
export const heelOf = ({ plan }: SumpRun): number => Math.round(0.07 * plan.document.fillVolume)

/** Empties a sump but for its heel; gives the true litres taken out. */
export function empty(shop: ShopRun, run: SumpRun, ms: number): number {
  advance(run, shop, ms)
  const { day } = dayHourOf(shop.days, ms)
  const heel = heelOf(run) * run.plan.nature.volumeScale * 1.15
  return takeOut(run.truth, day, 'drawn-off', Math.max(0, run.truth.volume - heel)).volume
}

/** A fresh charge to the mark, at the target, mixed at the dial and checked; with tap water, which foams less. */
export function charge(shop: ShopRun, run: SumpRun, ms: number, by: string, lot: string): void {
  advance(run, shop, ms)
  const { document, nature } = run.plan
  const { day } = dayHourOf(shop.days, ms)
  const random = shop.randomOf(`charge ${document.id} ${day}`)
  const heldBack = heelOf(run)
  const mark = markOn(shop, run, day)
  const volume = toStep(mark - heldBack, mark > 100 ? 5 : 1)
  const strength = run.target
  const water = 'tap'
  const mix = { volume: volume * nature.volumeScale, strength: strength * (1 + random.normal(0.03)), water }
  takeInMix(shop, run, day, mix)
  run.truth.bacteria = Math.max(2.2, run.truth.bacteria - 2.5)
  shop.journal.write({
    kind: 'charge',
    sump: document.id,
    atMs: ms,
    by,
    typed: { volume: `${volume} L`, strength: `${typedNumber(strength)} %` },
    fields: {
      volume,
      strength,
      water,
      fluid: document.fluid,
      lot,
      ...(random.chance(0.8) ? { heldBack } : {}),
    },
  })
}
