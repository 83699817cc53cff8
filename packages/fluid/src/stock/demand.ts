import type { DayNumber } from '../calendar/day-number.ts'
import type { Litres, LitresPerDay, Sd } from '../quantities.ts'
import { type DemandPattern, demandPattern } from './demand-pattern.ts'
import { intermittentDemand } from './intermittent.ts'

/** Weeks that a forecast looks back; four times as many where so few of them have any use. */
const weeksBack = 26
const fewUses = 4
/** Weeks below which it is a first guess. */
const fewWeeks = 6
/** Weight of the newest use, where use has gaps. */
const alpha = 0.1

/** Litres gone on a day, or evenly over days (both included). */
export interface Use {
  from: DayNumber
  to: DayNumber
  litres: Litres
}

/** What goes in a day on the mean, and how sure that is. */
export interface Demand {
  pattern: DemandPattern
  dailyMean: LitresPerDay
  /** From day to day. */
  dailySd: Sd
  /** Of the mean itself. */
  dailyMeanSd: Sd
  /** Weeks from one with any use to the next. */
  interval: number
  /** Whole weeks looked at. */
  weeks: number
  isFirstGuess: boolean
  /** Weeks since anything was used, 0 for the last one. */
  idleWeeks: number
}

/**
 * What a fluid's use was in whole weeks before today, and from that what it will be: where it is used in most weeks the mean of
 * up to 26 of them (104 where fewer than four of them have any use), where it is used now and then, four times at least, the rate of {@link intermittentDemand}. A week has seven days whatever the shop worked, so weekends and
 * shutdowns are in the mean.
 *
 *     dailySd = sd of weeks / √7                dailyMeanSd = sd of weeks / √weeks / 7
 *
 * It knows no season and no order book: what is planned comes on top.
 *
 * @param uses in any order; those before `firstDay` and from `today` on do not count
 * @param firstDay from which on the records are whole
 * @returns null where no whole week has passed or nothing was used in any
 * @example demandOf([{ from: 0, to: 13, litres: 70 }], { firstDay: 0, today: 14 })?.dailyMean // 5
 */
export function demandOf(
  uses: readonly Use[],
  { firstDay, today }: { firstDay: DayNumber; today: DayNumber },
): Demand | null {
  const near = weeklyUse(uses, { firstDay, today })
  const isSeldom = near.filter((litres) => litres > 0).length < fewUses
  const { weeks, mean: plain } = isSeldom ? allWeeks(uses, { firstDay, today }) : { weeks: near, mean: meanOf(near) }
  const kind = demandPattern(weeks)
  if (kind === null) return null
  const hasGaps = kind.pattern === 'now-and-then' || kind.pattern === 'lumpy'
  // One or two uses have no interval to smooth: where they stand in the weeks would decide everything.
  const isMany = weeks.filter((litres) => litres > 0).length >= fewUses
  const mean = hasGaps && isMany ? intermittentDemand(weeks, alpha)!.corrected : plain
  // One week alone tells nothing of how weeks differ: as much as it used.
  const sd =
    weeks.length < 2
      ? plain
      : Math.sqrt(weeks.reduce((sum, litres) => sum + (litres - plain) ** 2, 0) / (weeks.length - 1))
  return {
    pattern: kind.pattern,
    dailyMean: mean / 7,
    dailySd: sd / Math.sqrt(7),
    dailyMeanSd: sd / Math.sqrt(weeks.length) / 7,
    interval: kind.interval,
    weeks: weeks.length,
    isFirstGuess: weeks.length < fewWeeks,
    idleWeeks: weeks.length - 1 - weeks.findLastIndex((litres) => litres > 0),
  }
}

const meanOf = (weeks: readonly Litres[]) => weeks.reduce((sum, litres) => sum + litres, 0) / weeks.length

/** Of a fluid used seldom every day counts: those before the first whole week stand in it, and the mean is over the days. */
function allWeeks(
  uses: readonly Use[],
  { firstDay, today }: { firstDay: DayNumber; today: DayNumber },
): { weeks: Litres[]; mean: Litres } {
  const most = 4 * weeksBack
  const weeks = weeklyUse(uses, { firstDay, today, most })
  if (weeks.length === 0) return { weeks, mean: 0 }
  const begin = Math.max(firstDay, today - 7 * most)
  const before = inDays(uses, { from: begin, to: today - 7 * weeks.length - 1 })
  weeks[0] = weeks[0]! + before
  return { weeks, mean: (7 * inDays(uses, { from: begin, to: today - 1 })) / (today - begin) }
}

/** Litres gone in days, both included. */
function inDays(uses: readonly Use[], { from, to }: { from: DayNumber; to: DayNumber }): Litres {
  return uses.reduce((sum, use) => {
    const days = Math.max(0, Math.min(use.to, to) - Math.max(use.from, from) + 1)
    return days === 0 ? sum : sum + (use.litres * days) / (use.to - use.from + 1)
  }, 0)
}

/** Litres of each whole week before today, oldest first. */
export function weeklyUse(
  uses: readonly Use[],
  { firstDay, today, most = weeksBack }: { firstDay: DayNumber; today: DayNumber; most?: number },
): Litres[] {
  const count = Math.max(0, Math.min(most, Math.floor((today - firstDay) / 7)))
  const begin = today - 7 * count
  return Array.from({ length: count }, (_, week) => inDays(uses, { from: begin + 7 * week, to: begin + 7 * week + 6 }))
}
