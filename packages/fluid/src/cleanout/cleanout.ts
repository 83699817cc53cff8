import { fillUpStrength } from '../mixing/alligation.ts'
import type { Litres, Percent } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** A sump that is drained, cleaned, rinsed and charged again. */
export interface CleanoutAsked {
  /** At the full mark, lines included, above 0. */
  volume: Litres
  /** What stays in lines, conveyor and corners at each drain, less than `volume`. */
  heldBack: Litres
  /** Of the cleaner as it is poured. */
  cleanerPercent: Percent
  /** Of the weak fluid as it is poured for a rinse. */
  rinsePercent: Percent
  /** Part of a full charge that each rinse takes, 0 to 1. No rinse is filled above the mark. */
  rinseFraction: number
  /** A whole number, 0 or more. */
  rinses: number
  /** Concentration wanted in the fresh charge, heel included. */
  target: Percent
  /** The strongest mix that can be poured; 100 without it. */
  strongest?: Percent
}

/** What is poured: concentrate (of the cleaner or of the fluid) into water. */
export interface CleanoutPour {
  volume: Litres
  strength: Percent
  concentrate: Litres
  water: Litres
}

/** What is in a sump beside water. */
export interface Contents {
  /** Share of the old fluid, 100 before the first drain. */
  oldFluid: Percent
  cleaner: Percent
  /** Concentration of the new fluid. */
  fluid: Percent
}

/** One filling: what is poured onto the heel, and what circulates then. */
export interface CleanoutFill {
  stage: 'cleaner' | 'rinse' | 'charge'
  pour: CleanoutPour
  contents: Contents
}

/** The quantities of a cleanout, or the strengths between which the fresh charge must stay. */
export type CleanoutQuantities =
  | {
      outcome: 'quantities'
      /** In order: the cleaner, each rinse, the fresh charge. */
      fills: CleanoutFill[]
      /** Litres taken out at each drain, the old fluid first. */
      drained: Litres[]
      /** All that is drained. */
      waste: Litres
      /** In the heel that waits for the fresh charge. */
      afterRinses: Contents
      charge: CleanoutPour
    }
  | { outcome: 'unreachable'; low: Percent; high: Percent }

const allOld: Contents = { oldFluid: 100, cleaner: 0, fluid: 0 }

/**
 * What a cleanout takes and leaves. Every drain leaves the same heel, and what is in it goes on into the next filling:
 *
 *     contents′ = (heldBack × contents + pour × poured contents) / (heldBack + pour)
 *     charge strength = (volume × target − heldBack × fluid in the heel) / (volume − heldBack)
 *
 * The old fluid in the heel is not counted on for the target: it is small, and the cleaner has broken it. Without a rinse the cleaner's
 * own heel goes into the charge. The heel decides: where it is guessed at half of what it is, four times as much of the old fluid stays.
 *
 * Source: plain mass balance, volumes taken as additive, each filling mixed through every line.
 *
 * @throws {RangeError} a quantity outside the range its field gives, a count of rinses that is not whole
 * @example cleanoutQuantities({ volume: 200, heldBack: 10, cleanerPercent: 2, rinsePercent: 2, rinseFraction: 0.4, rinses: 1, target: 8 })
 */
export function cleanoutQuantities(asked: CleanoutAsked): CleanoutQuantities {
  requireAsked(asked)
  const { volume, heldBack, cleanerPercent, rinsePercent, rinses, target, strongest = 100 } = asked
  const full = volume - heldBack
  const rinseVolume = Math.min(asked.rinseFraction * volume, full)
  const fills: CleanoutFill[] = []
  const fill = (stage: CleanoutFill['stage'], before: Contents, pour: CleanoutPour): Contents => {
    const contents = mixed({ heldBack, contents: before }, pour, stage === 'cleaner' ? 'cleaner' : 'fluid')
    fills.push({ stage, pour, contents })
    return contents
  }
  let contents = fill('cleaner', allOld, pourOf(full, cleanerPercent))
  for (let n = 0; n < rinses; n += 1) contents = fill('rinse', contents, pourOf(rinseVolume, rinsePercent))
  const needed = fillUpStrength({ volume: heldBack, concentration: contents.fluid, total: volume, target })
  if (needed.outcome === 'unreachable') return needed
  if (needed.strength > strongest) {
    const low = (heldBack * contents.fluid) / volume
    return { outcome: 'unreachable', low, high: low + (strongest * full) / volume }
  }
  const charge = pourOf(full, needed.strength)
  fill('charge', contents, charge)
  const drained = [full, full, ...Array.from({ length: rinses }, () => rinseVolume)]
  return {
    outcome: 'quantities',
    fills,
    drained,
    waste: drained.reduce((sum, litres) => sum + litres, 0),
    afterRinses: contents,
    charge,
  }
}

function pourOf(volume: Litres, strength: Percent): CleanoutPour {
  const concentrate = (volume * strength) / 100
  return { volume, strength, concentrate, water: volume - concentrate }
}

function mixed(
  { heldBack, contents }: { heldBack: Litres; contents: Contents },
  { volume, strength }: CleanoutPour,
  what: 'cleaner' | 'fluid',
): Contents {
  const total = heldBack + volume
  // Without a heel, and with nothing poured, nothing is there at all.
  if (total === 0) return { oldFluid: 0, cleaner: 0, fluid: 0 }
  const after = (there: Percent, poured: Percent) => (heldBack * there + volume * poured) / total
  return {
    oldFluid: after(contents.oldFluid, 0),
    cleaner: after(contents.cleaner, what === 'cleaner' ? strength : 0),
    fluid: after(contents.fluid, what === 'fluid' ? strength : 0),
  }
}

function requireAsked(asked: CleanoutAsked): void {
  requireRange('volume', asked.volume, { above: 0 })
  requireRange('heldBack', asked.heldBack, { min: 0, max: asked.volume })
  if (asked.heldBack === asked.volume) throw new OutOfRange('heldBack', asked.heldBack, 'less than the volume')
  requireRange('cleanerPercent', asked.cleanerPercent, { min: 0, max: 100 })
  requireRange('rinsePercent', asked.rinsePercent, { min: 0, max: 100 })
  requireRange('rinseFraction', asked.rinseFraction, { min: 0, max: 1 })
  requireRange('rinses', asked.rinses, { min: 0, max: 20 })
  if (!Number.isInteger(asked.rinses)) throw new OutOfRange('rinses', asked.rinses, 'a whole number')
  requireRange('target', asked.target, { min: 0, max: 100 })
  if (asked.strongest !== undefined) requireRange('strongest', asked.strongest, { above: 0, max: 100 })
}
