import { crossingHorizon, firstCrossing } from '../metrics/crossing.ts'
import { type Belief, copyBelief } from './matrix-filter.ts'
import { type Figure, figure, logFigure, type Question, type SumpEstimate } from './peer.ts'
import { moveTo, type Run, strengthOf } from './run.ts'
import { lnD, lnE, N, row, V } from './sump-belief.ts'
import { fluidAt } from './sump-history.ts'

const dayMs = 86_400_000

/** What a run of the filter says of now and of later, with nothing poured. */
export function estimateFrom(run: Run, { atMs, aheadDays }: Question): SumpEstimate {
  const { belief, doubts, history } = run
  const now = standing(belief)
  const later = courseFrom(run, Math.max(crossingHorizon, ...aheadDays))
  const band = fluidAt(history, atMs).limits.concentration
  return {
    now: { ...now, ...lossesOf(run, atMs) },
    ahead: aheadDays.map((days) => ({ days, ...standing(later[days]!) })),
    crossingDays: firstCrossing(
      later.slice(0, crossingHorizon + 1).map((day) => strengthOf(day).percent),
      band,
    ),
    doubts,
  }
}

function courseFrom(run: Run, days: number): Belief[] {
  const ahead: Run = { ...run, belief: copyBelief(run.belief) }
  const startMs = run.ms
  return Array.from({ length: days + 1 }, (_, day) => {
    moveTo(ahead, startMs + day * dayMs)
    return copyBelief(ahead.belief)
  })
}

function standing(belief: Belief): Pick<SumpEstimate['now'], 'concentration' | 'volume' | 'hardness'> {
  const { mean } = belief
  const { percent, slope } = strengthOf(belief)
  const volume = mean[V]!
  const hardness = mean[N]! / volume
  return {
    concentration: figure(percent, sdAlong(belief, slope)),
    volume: figure(volume, sdAlong(belief, row([V, 1]))),
    hardness: figure(hardness, sdAlong(belief, row([V, -hardness / volume], [N, 1 / volume]))),
  }
}

function sdAlong({ cov }: Belief, slope: readonly number[]): number {
  let variance = 0
  slope.forEach((a, i) => {
    slope.forEach((b, j) => {
      variance += a * b * cov[i]![j]!
    })
  })
  return Math.sqrt(Math.max(variance, 1e-12))
}

/** Means over the 28 calendar days before, from the rates of a running day now. */
function lossesOf({ belief, days, options, history }: Run, atMs: number): { evaporation: Figure; carryOff: Figure } {
  const fromMs = atMs - 28 * dayMs
  if (options.losses !== null) {
    const { evaporated, carried } = options.losses(history.sump.id, fromMs, atMs)
    return { evaporation: logFigure(evaporated / 28, 0.01), carryOff: logFigure(carried / 28, 0.01) }
  }
  const today = Math.floor((atMs + days.offsetMs) / dayMs)
  const shares = Array.from({ length: 28 }, (_, before) => days.share(today - 1 - before))
  const mean = (of: (share: (typeof shares)[number]) => number) =>
    shares.reduce((sum, share) => sum + of(share), 0) / 28
  const rate = (state: number, share: number) =>
    logFigure(
      Math.max(Math.exp(belief.mean[state]!) * share, 1e-6),
      Math.sqrt(Math.max(belief.cov[state]![state]!, 1e-12)),
    )
  return {
    evaporation: rate(
      lnE,
      mean(({ evaporation }) => evaporation),
    ),
    carryOff: rate(
      lnD,
      mean(({ carryOff }) => carryOff),
    ),
  }
}
