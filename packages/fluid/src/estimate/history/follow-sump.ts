import type { EstimatedDoubt } from '../answer-types.ts'
import { habitsOf } from '../doubts/habits.ts'
import { tellings } from '../doubts/stories.ts'
import { alone, type RoundOffset } from '../entries/round.ts'
import { type Quantity, takeAll, takeMinerals } from '../entries/sights.ts'
import { sumpOf, takeEvent } from '../entries/take-event.ts'
import type { ReadingEvent, ShopEvent } from '../events.ts'
import { bringTo } from '../passing.ts'
import { bestBranch, type ShopEstimate, type SumpState } from '../shop-estimate.ts'
import { fill } from '../state.ts'

/** Events of a sump with what the doubts about them came to. */
export interface ToldSump {
  sump: string
  /** In the order of the journal, transfers into it included. */
  events: readonly ShopEvent[]
  doubts: readonly EstimatedDoubt[]
}

/**
 * Follows one sump through its events along the likeliest story of each doubt: figures that are not its own are left out, what
 * nobody wrote happens where it showed. One branch, no questions.
 *
 * @param reached is called whenever the sump has come to the time of an event, before it
 */
export function followSump(
  shop: ShopEstimate,
  { sump: id, events, doubts }: ToldSump,
  reached: (sump: SumpState, event: ShopEvent) => void,
): SumpState | null {
  const told = new Map(doubts.flatMap((doubt) => doubt.entries.map((entry) => [entry, doubt] as const)))
  for (const event of events) {
    if (event.kind === 'verdict') continue
    const sump = event.kind === 'transfer' && event.sump !== id ? (shop.sumps.get(id) ?? null) : sumpOf(shop, event)
    if (sump === null) continue
    reached(sump, event)
    if (event.kind === 'reading') read(shop, sump, event, told.get(event.id))
    else if (event.kind === 'transfer' && event.sump !== id) receive(shop, sump, event)
    else takeEvent(shop, sump, event, alone(shop.priors))
  }
  return shop.sumps.get(id) ?? null
}

function read(shop: ShopEstimate, sump: SumpState, reading: ReadingEvent, doubt: EstimatedDoubt | undefined): void {
  bringTo(shop, sump, reading.at)
  const branch = bestBranch(sump)
  if (doubt !== undefined) happenUnwritten(shop, sump, doubt)
  const circumstances = { offset: offsetIn(shop, doubt), priors: shop.priors }
  takeAll(branch, sump, reading, circumstances, quantityLeftOut(doubt))
  takeMinerals(branch, reading)
  sump.dataAt = reading.at
  sump.lastReadingAt = reading.at
}

const quantityLeftOut = (doubt: EstimatedDoubt | undefined): Quantity | null =>
  doubt?.kind === 'misread' || doubt?.kind === 'wrong-sump' ? doubt.found.quantity : null

function offsetIn({ priors }: ShopEstimate, doubt: EstimatedDoubt | undefined): RoundOffset {
  const usual = alone(priors)
  if (doubt?.kind !== 'instrument') return usual
  return { ...usual, mean: doubt.found.read - doubt.found.expected, variance: 0.1 ** 2 }
}

function happenUnwritten(shop: ShopEstimate, sump: SumpState, { kind }: EstimatedDoubt): void {
  const story = kind === 'leak-in' ? 'unlogged-water' : kind
  const { belief } = bestBranch(sump)
  tellings(habitsOf(sump, shop), belief.mean[fill]!)
    .find((telling) => telling.story === story)
    ?.apply?.(belief)
}

/** What another sump gave is taken as about what this one is filled with: the other is not followed here. */
function receive(shop: ShopEstimate, sump: SumpState, event: ShopEvent & { kind: 'transfer' }): void {
  const { target, fluid } = sump.spec
  const poured = { kind: 'addition', id: event.id, at: event.at, sump: event.to! } as const
  const water = { hardness: null, chloride: null }
  takeEvent(shop, sump, { ...poured, amount: event.volume, strength: target, water, fluid }, alone(shop.priors))
}
