import { quantile95 } from '../interval90.ts'
import type { Figure, Litres, Percent, Sd } from '../quantities.ts'

/** What happened to a sump, in canonical units, as far as its balance of concentrate goes. */
export type SumpEvent =
  | { kind: 'charge'; volume: Litres | null; strength: Percent | null; heldBack: Litres }
  | { kind: 'reading'; concentration: { mean: Percent; sd: Sd } | null; volume: { mean: Litres; sd: Sd } | null }
  | { kind: 'addition'; volume: Litres | null; strength: Percent | null; toMark: Litres | null }
  | { kind: 'drawoff'; volume: Litres | null }
  | { kind: 'transfer-in'; volume: Litres | null; concentration: Percent | null }

/** Where a sump stands by its records; null is unknown. Volume is all the fluid of the system. */
export interface SumpStanding {
  volume: Figure | null
  concentration: Figure | null
}

interface Estimate {
  mean: number
  sd: Sd
}

/** The balance so far: amounts with their doubts. */
interface Balance {
  volume: Estimate | null
  concentration: Estimate | null
}

/**
 * Where a sump stands after its records, carried from one to the next: the latest reading counts, and everything
 * poured or drawn since is added to it. What leaves unseen between records (evaporation, carry-off) is not in it,
 * so an old standing drifts from the truth: show how old its last reading is.
 *
 *     concentration′ = (concentration × volume + strength × pour) / (volume + pour)
 *
 * Source: conservation of concentrate, volumes taken as additive.
 */
export function standingAfter(events: readonly SumpEvent[]): SumpStanding {
  const { volume, concentration } = events.reduce(after, { volume: null, concentration: null })
  return { volume: figureOf(volume, Number.POSITIVE_INFINITY), concentration: figureOf(concentration, 100) }
}

function after(before: Balance, event: SumpEvent): Balance {
  switch (event.kind) {
    case 'charge':
      return charged(before, event)
    case 'reading':
      return { volume: event.volume ?? before.volume, concentration: event.concentration ?? before.concentration }
    case 'addition':
      return poured(before, pourOf(before, event))
    case 'transfer-in':
      return poured(before, { volume: certain(event.volume), strength: event.concentration })
    case 'drawoff':
      return drawn(before, event.volume)
  }
}

/** The heel keeps what the sump held; a heel of unknown strength leaves the mix unknown. */
function charged(before: Balance, { volume, strength, heldBack }: SumpEvent & { kind: 'charge' }): Balance {
  const heel =
    heldBack === 0 ? { volume: certain(0), concentration: certain(0) } : { ...before, volume: certain(heldBack) }
  if (volume === null) return { volume: null, concentration: heldBack === 0 ? certain(strength) : null }
  return poured(heel, { volume: certain(volume), strength })
}

interface Poured {
  volume: Estimate | null
  strength: Percent | null
}

function pourOf({ volume }: Balance, event: SumpEvent & { kind: 'addition' }): Poured {
  if (event.volume !== null) return { volume: certain(event.volume), strength: event.strength }
  if (event.toMark === null || volume === null) return { volume: null, strength: event.strength }
  return { volume: { mean: Math.max(0, event.toMark - volume.mean), sd: volume.sd }, strength: event.strength }
}

function poured(before: Balance, pour: Poured): Balance {
  if (pour.volume === null || before.volume === null) return { volume: null, concentration: null }
  const volume = { mean: before.volume.mean + pour.volume.mean, sd: before.volume.sd }
  if (volume.mean <= 0) return { volume, concentration: before.concentration }
  if (pour.volume.mean === 0) return { volume, concentration: before.concentration }
  if (before.concentration === null || pour.strength === null) return { volume, concentration: null }
  const share = before.volume.mean / volume.mean
  const mean = before.concentration.mean * share + pour.strength * (1 - share)
  const byVolume = (before.concentration.mean - mean) / volume.mean
  return { volume, concentration: { mean, sd: Math.hypot(share * before.concentration.sd, byVolume * volume.sd) } }
}

function drawn(before: Balance, volume: Litres | null): Balance {
  if (before.volume === null) return before
  if (volume === null) return { ...before, volume: null }
  return { ...before, volume: { mean: Math.max(0, before.volume.mean - volume), sd: before.volume.sd } }
}

const certain = <T extends number | null>(mean: T) =>
  (mean === null ? null : { mean, sd: 0 }) as T extends null ? null : Estimate

function figureOf(estimate: Estimate | null, most: number): Figure | null {
  if (estimate === null) return null
  const { mean, sd } = estimate
  return { mean, sd, low90: Math.max(0, mean - quantile95 * sd), high90: Math.min(most, mean + quantile95 * sd) }
}
