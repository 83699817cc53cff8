import { isShutdown, isWorkDay, type ShopClock, stepsPerDay, truthDays, truthSteps } from './clock.ts'
import type { Chance } from './random.ts'

/** What a machine loses, half hour by half hour, whatever is poured. */
export interface Losses {
  /** Litres of water in each step. */
  evaporated: Float64Array
  /** Litres of fluid in each step. */
  carried: Float64Array
  /** 1 while the pumps run. */
  running: Uint8Array
  /** Days on which another job began. */
  jobs: number[]
  /** First and last day of each standstill of this machine. */
  standstills: { from: number; to: number }[]
}

/** The shop's weather: a factor of evaporation for each day, season and warm spells together. */
export function drawWeather(chance: Chance): Float64Array {
  const season = chance.between(0.05, 0.3)
  const phase = chance.between(0, 2 * Math.PI)
  let spell = chance.normal(0.1)
  return Float64Array.from({ length: truthDays }, (_, day) => {
    spell = 0.85 * spell + chance.normal(0.06)
    return (1 + season * Math.cos(phase + (2 * Math.PI * day) / 365)) * Math.exp(spell)
  })
}

/**
 * Losses of one machine. Evaporation goes on at a lower rate while it stands. Carry-off belongs to the job: at every
 * new job it jumps by a factor whose logarithm has a Student's t distribution with 3 degrees of freedom, cut at a
 * factor of three. A sump that loses more than 3 % and 1.5 % a day would be topped up daily; there is none here.
 */
export function drawLosses(chance: Chance, clock: ShopClock, weather: Float64Array, volume: number): Losses {
  const evaporation = volume * Math.min(0.016 * chance.factor(0.45), 0.03)
  const carryOff = volume * Math.min(0.006 * chance.factor(0.6), 0.015)
  const standing = chance.between(0.1, 0.45)
  const hours = clock.closes - clock.opens
  const standstills = drawStandstills(chance)
  const losses: Losses = {
    evaporated: new Float64Array(truthSteps),
    carried: new Float64Array(truthSteps),
    running: new Uint8Array(truthSteps),
    jobs: [],
    standstills,
  }
  let nextJob = chance.exponential(35)
  let job = 1
  for (let day = 0; day < truthDays; day++) {
    if (day >= nextJob) {
      job = Math.exp(Math.max(-1.1, Math.min(1.1, 0.35 * chance.student(3))))
      nextJob += 3 + chance.exponential(35)
      losses.jobs.push(day)
    }
    const stands = !isWorkDay(clock, day) || standstills.some(({ from, to }) => day >= from && day <= to)
    const cold = isShutdown(clock, day) ? 0.6 : 1
    const wet = weather[day]! * chance.factor(0.1) * cold
    const oily = job * chance.factor(0.25)
    for (let step = 0; step < stepsPerDay; step++) {
      const place = day * stepsPerDay + step
      const runs = !stands && step / 2 >= clock.opens && step / 2 < clock.closes
      losses.running[place] = runs ? 1 : 0
      losses.evaporated[place] = ((evaporation * wet) / stepsPerDay) * (runs ? 1.4 : 1.4 * standing)
      losses.carried[place] = runs ? ((carryOff * oily) / (2 * hours)) * (hours / 16) ** 0.5 : 0
    }
  }
  return losses
}

function drawStandstills(chance: Chance): { from: number; to: number }[] {
  if (!chance.happens(0.3)) return []
  const from = Math.floor(chance.between(10, truthDays - 40))
  return [{ from, to: from + Math.floor(chance.between(3, 13)) }]
}
