import { quantile95 } from '../interval90.ts'
import type { Litres, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { makePour, outcomeOf, waterReasons } from './mix.ts'
import type { Action, Alternative, Pour, Pourable, Reason, Recipe, SumpToPour } from './recipe.ts'
import { type System, systemOf } from './system.ts'

/** The sump, resolved: every default filled in, everything in litres of the whole system. */
interface Bench extends System {
  /** Where a fill ends: the mark, or lower where the doubt about the volume could reach the brim. */
  end: Litres
  mark: Litres
  suction: Litres
  target: Percent
  low: Percent
  high: Percent
  leanest: Percent
  strongest: Percent
  waters: NonNullable<Pourable['waters']>
}

/**
 * What to pour into a sump so that it stands at its target at the full mark, and what to do where no pour can.
 *
 * The strength that meets the target when the sump is filled from `volume` to the mark is
 *
 *     strength = (target × mark − concentration × volume) / (mark − volume)
 *
 * held between the leanest and the strongest mix that can be poured. Where the mix so held does not bring the sump
 * into its band, the smallest amount d is drawn off first that lets the strongest (for a rich sump the leanest)
 * mix meet the target:
 *
 *     d = (target × mark − concentration × volume − strength × (mark − volume)) / (strength − concentration)
 *
 * Order of questions: a straight oil is refused; a doubt is settled first; a sump below the pumps' suction is filled
 * whatever its strength and however well that is known; an interval wider than the band is measured first; then the
 * pour, the draw-off, the change. The fill
 * ends lower than the mark where the upper bound of the volume could come to the brim. 1 % of error in `volume`
 * moves the strength by 1 % of (target − concentration) × volume × mark / pour²: a small pour corrects poorly.
 *
 * Source: conservation of concentrate, volumes taken as additive.
 *
 * @throws {RangeError} a quantity outside the range its type gives, a target no mix can hold, a level more than 5 %
 * above the brim
 * @example topUp({ volume: 150, concentration: 6.5, fillVolume: 200, target: 6 }) // add 50 L at 4.5 %
 */
export function topUp(sump: SumpToPour, pourable: Pourable = {}): Recipe {
  if (sump.class === 'straight-oil') return withoutPour('refuse', ['straight-oil'])
  const bench = setBench(sump, pourable)
  const low: Reason[] = isBelowSuction(bench) ? ['below-suction'] : []
  if (sump.doubt === true) return withoutPour('measure-first', ['doubt', ...low])
  if (bench.end <= 0) return withoutPour('measure-first', [...low, 'volume-too-uncertain'])
  if (isBelowSuction(bench)) return fillFirst(bench, wideInterval(sump, bench))
  const wide = wideInterval(sump, bench)
  if (wide.length > 0) return withoutPour('measure-first', wide)
  if (bench.volume > bench.brim) return downFromBrim(bench)
  if (bench.volume >= bench.mark) return isInBand(bench, bench.concentration) ? leave(bench) : exchange(bench)
  if (bench.end <= bench.volume) return withoutPour('measure-first', ['volume-too-uncertain'])
  const recipe = fill(bench)
  return isInBand(bench, recipe.result!.concentration) ? recipe : exchange(bench)
}

function setBench(sump: SumpToPour, pourable: Pourable): Bench {
  const { maxStrength: strongest = 20, minStrength: leanest = 0, waters = [] } = pourable
  const { fillVolume: mark, minVolume: suction = 0, target, band } = sump
  const system = systemOf(sump)
  requireRange('minVolume', suction, { min: 0, max: mark })
  requireRange('maxStrength', strongest, { above: 0, max: 100 })
  requireRange('minStrength', leanest, { min: 0, max: strongest })
  requireRange('target', target, { min: leanest, max: strongest })
  if (band !== undefined) {
    requireRange('band.low', band.low, { min: 0, max: 100 })
    requireRange('band.high', band.high, { min: band.low, max: 100 })
    requireRange('target', target, { min: band.low, max: band.high })
  }
  const end = Math.min(mark, system.brim - quantile95 * system.volumeSd)
  return {
    ...system,
    end,
    mark,
    suction,
    target,
    low: band?.low ?? 0,
    high: band?.high ?? 100,
    leanest,
    strongest,
    waters,
  }
}

/** Whether the strength is known less well than the band is wide; without a band it never is. */
function wideInterval({ band }: SumpToPour, { concentrationSd }: Bench): Reason[] {
  const width = band === undefined ? Number.POSITIVE_INFINITY : band.high - band.low
  return 2 * quantile95 * concentrationSd > width ? ['interval-wider-than-band'] : []
}

const isBelowSuction = ({ volume, suction }: Bench) => volume < suction
/** A hair of rounding at the edge of the band is no reason to draw off. */
const isInBand = ({ low, high }: Bench, concentration: Percent) =>
  concentration >= low - 1e-9 && concentration <= high + 1e-9

/** Filled to the mark at the strength that meets the target, held to what can be poured. */
function fill(bench: Bench): Recipe {
  const { volume, concentration, target, end, leanest, strongest, mark } = bench
  const room = end - volume
  const wanted = (target * end - concentration * volume) / room
  const strength = Math.min(strongest, Math.max(leanest, wanted))
  const because: Reason[] = [...sideOf(bench), ...heldAt(wanted, bench), ...(end < mark ? keptBelow : [])]
  const add = makePour(room, strength, bench.waters)
  return recipeOf(bench, { action: actionOf(strength, bench), add, drawOff: 0, because, alternatives: [] })
}

const keptBelow: Reason[] = ['kept-below-brim']

/** Level first: the nearest to the target that can be poured, even where it does not reach the band. */
function fillFirst(bench: Bench, wide: readonly Reason[]): Recipe {
  if (bench.end <= bench.volume) return withoutPour('measure-first', ['below-suction', 'volume-too-uncertain'])
  const recipe = fill(bench)
  const reached = recipe.result!.concentration
  const short: Reason[] =
    reached < bench.low - 1e-9 ? ['still-lean'] : reached > bench.high + 1e-9 ? ['still-rich'] : []
  return { ...recipe, because: ['below-suction', ...wide, ...recipe.because, ...short] }
}

function leave(bench: Bench): Recipe {
  const because: Reason[] = bench.volume > bench.mark ? ['in-band', 'above-mark'] : ['in-band']
  return recipeOf(bench, { action: 'none', add: null, drawOff: 0, because, alternatives: [] })
}

/** In its band, but over the brim: down to the mark, nothing poured. */
function downFromBrim(bench: Bench): Recipe {
  if (!isInBand(bench, bench.concentration)) {
    const recipe = exchange(bench)
    return { ...recipe, because: ['above-brim', ...recipe.because] }
  }
  const drawOff = bench.volume - bench.mark
  return recipeOf(bench, { action: 'draw-off', add: null, drawOff, because: ['above-brim'], alternatives: [] })
}

/** The smallest draw-off after which the strongest (or leanest) mix brings the sump to its target. */
function exchange(bench: Bench): Recipe {
  const { volume, concentration, target, end, leanest, strongest } = bench
  const strength = concentration < target ? strongest : leanest
  const room = end - volume
  const drawOff = (target * end - concentration * volume - strength * room) / (strength - concentration)
  const alternatives = withRoomAboveMark(bench)
  if (!(drawOff < volume * (1 - 1e-12))) {
    const add = makePour(end, target, bench.waters)
    return recipeOf(bench, { action: 'change', add, drawOff: volume, because: sideOf(bench), alternatives })
  }
  const add = makePour(room + drawOff, strength, bench.waters)
  return recipeOf(bench, { action: 'draw-off', add, drawOff, because: sideOf(bench), alternatives })
}

/** Without any waste: a pour above the mark, as far as the brim allows, where that lands in the band. */
function withRoomAboveMark(bench: Bench): Alternative[] {
  const { volume, concentration, target, brim, volumeSd, leanest, strongest } = bench
  const strength = concentration < target ? strongest : leanest
  const most = brim - quantile95 * volumeSd - volume
  const toTarget = ((target - concentration) * volume) / (strength - target)
  const pour = Math.min(most, toTarget)
  if (!(pour > 0) || volume > bench.brim) return []
  const add = makePour(pour, strength, bench.waters)
  const result = outcomeOf(bench, 0, add)
  if (!isInBand(bench, result.concentration)) return []
  return [{ action: actionOf(strength, bench), add, drawOff: 0, result, because: ['above-mark'] }]
}

const actionOf = (strength: Percent, { leanest }: Bench): Action =>
  strength <= leanest + 1e-12 ? 'water-only' : 'top-up'

function heldAt(wanted: Percent, { strongest, leanest }: Bench): Reason[] {
  if (wanted > strongest + 1e-9) return ['held-at-strongest']
  return wanted < leanest - 1e-9 ? ['held-at-leanest'] : []
}

function sideOf({ concentration, low, high }: Bench): Reason[] {
  if (concentration < low) return ['lean']
  return concentration > high ? ['rich'] : ['in-band']
}

function recipeOf(bench: Bench, recipe: Omit<Recipe, 'result'>): Recipe {
  const because = [...recipe.because, ...pourReasons(recipe.add, bench)]
  return { ...recipe, because, result: outcomeOf(bench, recipe.drawOff, recipe.add) }
}

function pourReasons(add: Pour | null, { waters }: Bench): Reason[] {
  if (add === null) return []
  return [...(add.strength >= 100 ? (['neat-concentrate'] as const) : []), ...waterReasons(waters)]
}

function withoutPour(action: Action, because: Reason[]): Recipe {
  return { action, add: null, drawOff: 0, result: null, alternatives: [], because }
}
