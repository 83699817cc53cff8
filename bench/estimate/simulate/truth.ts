import type { Truth, TruthAhead } from '../world.ts'
import { dayMs, type ShopClock, stepOf, stepsPerDay } from './clock.ts'
import type { SimSump } from './sump.ts'

export function truthOf(clock: ShopClock, sumps: readonly SimSump[]): Truth {
  const byId = new Map(sumps.map((sump) => [sump.id, sump]))
  const sumpOf = (id: string): SimSump => {
    const sump = byId.get(id)
    if (sump === undefined) throw new RangeError(`no sump ${id} in this shop`)
    return sump
  }
  const losses = (id: string, fromMs: number, toMs: number) => {
    const { losses: course } = sumpOf(id)
    return {
      evaporated: between(course.evaporated, clock, fromMs, toMs),
      carried: between(course.carried, clock, fromMs, toMs),
    }
  }
  const stateAt = (id: string, ms: number): TruthAhead => {
    const { course } = sumpOf(id)
    const step = stepOf(clock, ms)
    if (step < 0 || step >= course.volume.length) throw new RangeError(`${new Date(ms).toISOString()} is not simulated`)
    return {
      concentration: course.concentration[step]!,
      volume: course.volume[step]!,
      hardness: course.hardness[step]!,
    }
  }
  return {
    losses,
    at(id, ms) {
      const { evaporated, carried } = losses(id, ms - 28 * dayMs, ms)
      return { ...stateAt(id, ms), evaporation28: evaporated / 28, carryOff28: carried / 28 }
    },
    ahead(id, ms, days) {
      const sump = sumpOf(id)
      return leftAlone(sump, stateAt(id, ms), stepOf(clock, ms), days)
    },
  }
}

/** The litres of a course between two instants; parts of a half hour count in proportion. */
function between(course: Float64Array, clock: ShopClock, fromMs: number, toMs: number): number {
  const place = (ms: number) => Math.min(Math.max((ms - clock.startMs) / 1_800_000, 0), course.length)
  const [from, to] = [place(fromMs), place(toMs)]
  let sum = 0
  for (let step = Math.floor(from); step < to; step++) {
    sum += course[step]! * (Math.min(step + 1, to) - Math.max(step, from))
  }
  return sum
}

/** The same half hours as in the shop, with nobody pouring. */
function leftAlone({ losses, traits }: SimSump, now: TruthAhead, from: number, days: number): TruthAhead[] {
  const { depletion, scum, chips } = traits.chemistry
  const dt = 1 / stepsPerDay
  let { volume } = now
  let concentrate = (now.concentration * volume) / 100
  let hardness = now.hardness * volume
  const course: TruthAhead[] = [now]
  for (let day = 0; day < days; day++) {
    for (let step = from + day * stepsPerDay; step < from + (day + 1) * stepsPerDay; step++) {
      volume -= Math.min(losses.evaporated[step]!, (volume - concentrate) * 0.95)
      const kept = 1 - Math.min(losses.carried[step]!, Math.max(volume - 1, 0)) / volume
      volume *= kept
      concentrate *= kept
      hardness *= kept
      volume -= concentrate * depletion * dt
      concentrate *= 1 - depletion * dt
      hardness += (chips * volume - Math.max(hardness - 150 * volume, 0) * scum) * dt
    }
    course.push({ concentration: (100 * concentrate) / volume, volume, hardness: hardness / volume })
  }
  return course
}
