import type { Days, Figure } from '../../quantities.ts'
import type { EstimatedDoubt, FiguresAhead, SumpEstimate } from '../answer-types.ts'
import { doubtOf } from '../doubts/doubt.ts'
import type { ShopTime } from '../events.ts'
import type { ShopEstimate, SumpState } from '../shop-estimate.ts'
import { carryOff, evaporation, scale } from '../state.ts'
import { workBetween } from '../work-calendar.ts'
import { figureOf, figureOfLogs, innerOf } from './mixture.ts'
import { dropAll, later, type Mix, type MixAndMinerals, type Untouched, untouched, type Weighed } from './untouched.ts'

/** The days over which evaporation and carry-off are given. */
const meanDays = 28

/**
 * Where a sump stands at a time, and where it will stand if nothing is poured or drawn. Changes nothing.
 *
 * @param at not before the records that were taken in; a time before is taken as theirs
 * @throws {RangeError} a sump that no record describes
 */
export function estimateSump(shop: ShopEstimate, id: string, at: ShopTime, aheadDays: readonly Days[]): SumpEstimate {
  return estimateOf(untouched(shop, id, at), aheadDays)
}

/** The same of a sump of which other things are asked as well. */
export function estimateOf(asked: Untouched, aheadDays: readonly Days[]): SumpEstimate {
  const { shop, sump, now } = asked
  const { hardness, chloride } = asked.mixAndMineralsIn(0)
  const { concentration, volume, markVolume } = mixNow(asked)
  const beliefs = later(shop, sump, now)
  const estimate = {
    now: {
      concentration,
      volume,
      hardness: figureOf(hardness, 0),
      chloride: figureOf(chloride, 0),
      evaporation: lossOf(shop, sump, beliefs, now, 'evaporation'),
      carryOff: lossOf(shop, sump, beliefs, now, 'carryOff'),
      markVolume,
    },
    ahead: aheadDays.map((days) => figuresOf(asked.mixAndMineralsIn(days), days)),
    doubts: doubtsOf(asked),
    dataAt: sump.dataAt,
  }
  dropAll(beliefs)
  return estimate
}

/** What is in a sump now, and what it truly holds at its mark, in percent and litres. */
export function mixNow(asked: Untouched): Pick<SumpEstimate['now'], 'concentration' | 'volume' | 'markVolume'> {
  return { ...mixFigures(asked.mixIn(0)), markVolume: figureOfLogs(asked.mark) }
}

/** What will be in it. */
export const mixAfter = (asked: Untouched, days: Days): { concentration: Figure; volume: Figure } =>
  mixFigures(asked.mixIn(days))

const mixFigures = ({ strength, volume }: Mix) => ({
  concentration: figureOf(strength, 0, 100),
  volume: figureOf(volume, 0),
})

/** Figures of a day ahead. */
export function figuresOf(mix: MixAndMinerals, days: Days): FiguresAhead {
  return {
    days,
    ...mixFigures(mix),
    hardness: figureOf(mix.hardness, 0),
    // Only drawings ask for it.
    get inner() {
      return { concentration: innerOf(mix.strength, 0), volume: innerOf(mix.volume, 0) }
    },
  }
}

/** Litres a calendar day, the mean of the last four weeks, idle days included. */
function lossOf(
  { calendar, priors }: ShopEstimate,
  { plate, idles }: SumpState,
  weighed: readonly Weighed[],
  now: ShopTime,
  which: 'evaporation' | 'carryOff',
) {
  const work = Math.min(meanDays, workBetween(calendar, now - meanDays, now, idles))
  const days = work + priors.idle[which] * (meanDays - work)
  const i = which === 'evaporation' ? evaporation : carryOff
  const share = Math.log((plate * Math.max(days, 0.01)) / meanDays)
  return figureOfLogs(
    weighed.map(({ belief: { size: n, mean, cov }, probability }) => {
      const variance = cov[i * n + i]! + 2 * cov[i * n + scale]! + cov[scale * n + scale]!
      return { probability, mean: mean[i]! + mean[scale]! + share, sd: Math.sqrt(Math.max(variance, 0)) }
    }),
  )
}

/** Doubts that nobody answered, the oldest first. */
export function doubtsOf({ sump, now }: Pick<Untouched, 'sump' | 'now'>): EstimatedDoubt[] {
  const open = sump.surprises.flatMap((surprise) => {
    const doubt = doubtOf(sump, surprise, true)
    return doubt === null ? [] : [doubt]
  })
  const closed = sump.doubts.map((doubt) => ({ ...doubt, open: isOpen(doubt, sump, now) }))
  return [...closed, ...open].sort((a, b) => a.at - b.at)
}

/** A figure that was set aside still counts as a doubt until the sump is read again. */
const isOpen = (doubt: EstimatedDoubt, sump: SumpState, now: ShopTime): boolean =>
  doubt.at === sump.lastReadingAt && now - doubt.at < 14
