import type { ShopEvent } from '@sumpbook/fluid'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import { amountOf, percentOf, textOf } from './amounts.ts'
import type { Placed } from './placed.ts'
import type { Translation } from './translation.ts'
import { waterPoured } from './water-poured.ts'

type ChargeEvent = Extract<ShopEvent, { kind: 'charge' }>
type AdditionEvent = Extract<ShopEvent, { kind: 'addition' }>

/** A fresh filling. */
export function chargeOf(
  entry: EntryOf<'charge'>,
  { id, at }: Placed,
  things: Things,
  memory: Translation,
): ChargeEvent {
  return {
    kind: 'charge',
    id,
    at,
    sump: entry.sump,
    volume: amountOf(entry.volume),
    strength: percentOf(entry.strength),
    water: waterPoured(entry.water, things, memory),
    fluid: fluidOfCharge(entry, things),
    heldBack: amountOf(entry.heldBack),
  }
}

/** The sump has a charge's fluid and lot from here on. */
export function rememberCharge(entry: EntryOf<'charge'>, things: Things, { sumps }: Translation): void {
  const sump = sumps.get(entry.sump)
  if (sump !== undefined) sump.charge = { fluid: fluidOfCharge(entry, things), lot: textOf(entry.lot) }
}

const fluidOfCharge = ({ fluid, sump }: EntryOf<'charge'>, things: Things) =>
  textOf(fluid) ?? things.sump.get(sump)?.fluid ?? ''

/** What was poured; null where nothing of it is mix, or nothing is known to have been poured. */
export function additionOf(
  entry: EntryOf<'addition'>,
  { id, at }: Placed,
  things: Things,
  memory: Translation,
): AdditionEvent | null {
  const metered = meteredOf(entry, things, memory)
  const poured = pouredOf(entry, metered)
  if (poured === null) return null
  return {
    kind: 'addition',
    id,
    at,
    sump: entry.sump,
    ...poured,
    water: waterPoured(entry.water, things, memory),
    fluid: textOf(entry.fluid) ?? fluidIn(entry.sump, things, memory),
  }
}

/** The fluid of the last charge, else the sump's own. */
export const fluidIn = (sump: string, things: Things, { sumps }: Translation): string =>
  sumps.get(sump)?.charge?.fluid ?? things.sump.get(sump)?.fluid ?? ''

function pouredOf(entry: EntryOf<'addition'>, metered: Metered): Pick<AdditionEvent, 'amount' | 'strength'> | null {
  const [volume, concentrate] = [amountOf(entry.volume), amountOf(entry.concentrate)]
  const strength = percentOf(entry.strength)
  if (volume !== null) return { amount: volume, strength: strength ?? shareOf(concentrate, volume) }
  if (concentrate !== null) return { amount: concentrate, strength: 100 }
  if (metered.outcome === 'poured') return { amount: metered.litres, strength }
  if (entry.toMark === true) return { amount: 'to-mark', strength }
  if (metered.outcome === 'first-count') return null
  return entry.additive === undefined ? { amount: null, strength } : null
}

const shareOf = (concentrate: number | null, volume: number): number | null =>
  concentrate === null || volume === 0 || concentrate > volume ? null : (100 * concentrate) / volume

type Metered = { outcome: 'no-meter' | 'first-count' } | { outcome: 'poured'; litres: number | null }

/** The difference to the meter's last count. One that runs back was exchanged or set to zero: how much was poured is unknown. */
function meteredOf({ meter }: EntryOf<'addition'>, things: Things, { meters }: Translation): Metered {
  const count = amountOf(meter?.count)
  if (meter === undefined || count === null) return { outcome: 'no-meter' }
  const before = meters.get(meter.id)
  meters.set(meter.id, count)
  if (before === undefined) return { outcome: 'first-count' }
  const perCount = things.meter.get(meter.id)?.litresPerCount
  if (perCount === undefined || count < before) return { outcome: 'poured', litres: null }
  return { outcome: 'poured', litres: (count - before) * perCount }
}
