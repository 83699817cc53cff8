import type { Truth } from '../world.ts'
import { type Calendar, dayMs, hourMs } from './calendar.ts'
import { flow, percentOf } from './contents.ts'
import type { Place } from './scene.ts'

/** Share of the mark at which pumps draw air and nothing is lost any more. */
export const dryShare = 0.1

/** What the places' past tells, at full hours. */
export function hindsight(calendar: Calendar, places: readonly Place[]): Truth {
  const placeOf = (sump: string): Place => {
    const place = places.find(({ machine }) => machine.id === sump)
    if (place === undefined) throw new RangeError(`no sump ${sump} in this shop`)
    return place
  }
  const hourOf = (ms: number) => (ms - calendar.startMs) / hourMs
  const stood = (sump: string, ms: number) => {
    const past = placeOf(sump).past[hourOf(ms)]
    if (past === undefined) throw new RangeError(`${new Date(ms).toISOString()} is no full hour of the simulation`)
    return { concentration: past.percent, volume: past.litres, hardness: past.hardness }
  }
  const losses: Truth['losses'] = (sump, fromMs, toMs) => {
    const { flows } = placeOf(sump).wandering
    const sum = { evaporated: 0, carried: 0 }
    const [from, to] = [Math.max(0, hourOf(fromMs)), Math.min(flows.length, hourOf(toMs))]
    for (let hour = Math.floor(from); hour < to; hour++) {
      const part = Math.min(hour + 1, to) - Math.max(hour, from)
      sum.evaporated += part * flows[hour]!.evaporation
      sum.carried += part * flows[hour]!.carryOff
    }
    return sum
  }
  return {
    losses,
    at(sump, ms) {
      const { evaporated, carried } = losses(sump, ms - 28 * dayMs, ms)
      return { ...stood(sump, ms), evaporation28: evaporated / 28, carryOff28: carried / 28 }
    },
    ahead(sump, ms, days) {
      const { machine, wandering } = placeOf(sump)
      const now = stood(sump, ms)
      const course = [now]
      let left = {
        litres: now.volume,
        concentrate: [(now.concentration * now.volume) / 100],
        hardness: now.hardness * now.volume,
        salts: 0,
      }
      const first = hourOf(ms)
      for (let hour = first; hour < first + days * 24; hour++) {
        left = flow(left, wandering.flows[hour]!, 1, machine.wear, dryShare * machine.mark)
        if ((hour + 1 - first) % 24 !== 0) continue
        const { litres, hardness } = left
        course.push({ concentration: percentOf(left), volume: litres, hardness: hardness / litres })
      }
      return course
    },
  }
}
