import type { Chance } from '../simulate/random.ts'
import { type Calendar, inShift, truthHours } from './calendar.ts'
import type { Flows } from './contents.ts'

/** How a machine loses fluid and is used, whoever looks after it. */
export interface Wandering {
  /** Hour by hour. */
  flows: Flows[]
  /** Hours run up to the end of each hour. */
  hoursRun: Float64Array
  /** Days on which another job began. */
  newJobs: number[]
}

export interface Nature {
  /** Litres in a working day of full use. */
  evaporation: number
  carryOff: number
  /** Share of the evaporation that goes on while the machine stands. */
  standing: number
}

/** Degrees by which each day is warmer than the half year's mean: a season and spells of weather. */
export function drawWarmth(chance: Chance): Float64Array {
  const season = chance.between(1, 7)
  const coldest = chance.between(0, 365)
  let spell = chance.normal(2)
  return Float64Array.from({ length: truthHours / 24 }, (_, day) => {
    spell = 0.8 * spell + chance.normal(1.2)
    return spell - season * Math.cos((2 * Math.PI * (day - coldest)) / 365)
  })
}

/**
 * The logarithms of both rates walk at random from day to day. The carry-off also steps when the job changes, by
 * Student's t with two degrees of freedom, a third of the old step staying. Warmth adds 2.5 % evaporation a degree, and the use of
 * a machine goes up and down with its orders.
 */
export function wander(
  chance: Chance,
  calendar: Calendar,
  warmth: Float64Array,
  nature: Nature,
  down: readonly { from: number; to: number }[],
): Wandering {
  const flows: Flows[] = []
  const hoursRun = new Float64Array(truthHours)
  const newJobs: number[] = []
  let [ofEvaporation, ofCarryOff, job, orders, run] = [0, 0, 0, 0, 0]
  warmth.forEach((degrees, day) => {
    ofEvaporation += chance.normal(0.01)
    ofCarryOff += chance.normal(0.01)
    orders = 0.9 * orders + chance.normal(0.04)
    if (chance.happens(1 / 80)) {
      job = job / 3 + Math.max(-1, Math.min(1, 0.18 * chance.student(2)))
      newJobs.push(day)
    }
    const stands = calendar.days[day] !== 'work' || down.some(({ from, to }) => day >= from && day <= to)
    const use = stands ? 0 : Math.min(1.2, Math.exp(orders))
    const wet = nature.evaporation * Math.exp(ofEvaporation + 0.025 * degrees) * chance.factor(0.06)
    const oily = nature.carryOff * Math.exp(ofCarryOff + job) * chance.factor(0.12)
    const ofDay = wet * (nature.standing + (1 - nature.standing) * use)
    const shift = calendar.shift.to - calendar.shift.from
    for (let hour = 24 * day; hour < 24 * (day + 1); hour++) {
      const runs = use > 0 && inShift(calendar, hour)
      // What evaporates above the standing rate does so while the machine runs.
      const extra = runs ? (ofDay - wet * nature.standing) / shift : 0
      flows.push({ evaporation: (wet * nature.standing) / 24 + extra, carryOff: runs ? (oily * use) / shift : 0 })
      run += runs ? Math.min(use, 1) : 0
      hoursRun[hour] = run
    }
  })
  return { flows, hoursRun, newJobs }
}
