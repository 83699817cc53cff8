/**
 * The flow of the estimate through textbook tanks: what passes at a sump that nobody touches, and pours, must empty, wash out, build up and
 * settle as the books say.
 *
 * W. E. Boyce, R. C. DiPrima, Elementary Differential Equations, section 2.3; D. G. Zill, Advanced Engineering Mathematics, chapter 2; W. F. Trench,
 * Elementary Differential Equations, section 4.2; P. Dawkins, online notes, mixing problems; M. Cutlip, M. Shacham, POLYMATH problem 1.13: statements
 * read in copies, answers from memory where a book has them; every answer was computed again from its closed form. Cooling tower: blow-down = evaporation /
 * (cycles − 1), with its example of 15 and 5 cycles, read in a copy. Top-up that holds the target and hardness at balance: mass balance, as in
 * UFC 3-240-13FN.
 *
 * A steady inflow is poured in 2000 equal parts, half of each before and half after the outflow of its time: second order, an error of about
 * (inflow of a part / volume)² ≤ 1e-6 of the contents for each turnover. Tolerance 1e-5 of the answer, or half of its last digit if that is more; without
 * inflow the closed form is in the code and the tolerance is rounding.
 */
import { expect, test } from 'vitest'
import { pass } from '../packages/fluid/src/estimate/flow.ts'
import { type Pour, pourShare, takeOut } from '../packages/fluid/src/estimate/pour.ts'
import { chemistry } from '../packages/fluid/src/estimate/priors.ts'
import {
  carryOff,
  chloride,
  evaporation,
  fill,
  hardness,
  size,
  strength,
} from '../packages/fluid/src/estimate/state.ts'
import { type Belief, newBelief } from '../packages/fluid/src/filter/index.ts'

/** Shares of the full tank a unit of time. */
interface Losses {
  evaporation?: number
  carryOff?: number
}

interface Tank extends Belief {
  losses: Losses
}

function tank(level: number, held: number, losses: Losses): Tank {
  const belief = newBelief(size)
  belief.mean[fill] = level
  for (const i of [strength, hardness, chloride]) belief.mean[i] = held
  if (losses.evaporation !== undefined) belief.mean[evaporation] = Math.log(losses.evaporation)
  if (losses.carryOff !== undefined) belief.mean[carryOff] = Math.log(losses.carryOff)
  return { ...belief, losses }
}

const pourOf = (held: number): Pour => ({
  strength: held,
  strengthSd: 0,
  mixed: false,
  hardness: held,
  hardnessSd: 0,
  chloride: held,
  chlorideSd: 0,
})

/** A calendar too short for chemistry: only what flows counts. */
const flowOnly = 1e-12
/** So many units of time in which the tank has the losses it has, and no others. */
const flow = (belief: Tank, time: number) =>
  pass(belief, {
    days: flowOnly,
    evaporation: belief.losses.evaporation === undefined ? 0 : time,
    carryOff: belief.losses.carryOff === undefined ? 0 : time,
  })

const parts = 2000

/** Inflow of so much of the full tank a unit of time, at what it holds, beside the tank's own losses. */
function run(belief: Tank, time: number, inflow: number, held: number | ((at: number) => number)): void {
  const dt = time / parts
  for (let k = 0; k < parts; k++) {
    const heldAt = (at: number) => (typeof held === 'number' ? held : held(at))
    pourShare(belief, (inflow * dt) / 2, 0, pourOf(heldAt((k + 0.25) * dt)))
    flow(belief, dt)
    pourShare(belief, (inflow * dt) / 2, 0, pourOf(heldAt((k + 0.75) * dt)))
  }
}

const contents = ({ mean }: Belief, full: number, i: number = chloride) => mean[fill]! * full * mean[i]!
const close = (found: number, answer: number, within = 1e-5 * answer) =>
  expect(Math.abs(found - answer), `${found} for ${answer}`).toBeLessThan(within)

test('evaporation alone takes water: a tank that loses half of it holds twice as strong what it held', () => {
  const belief = tank(1, 6, { evaporation: 0.01 })
  flow(belief, 50)
  expect(belief.mean[fill]).toBeCloseTo(0.5, 12)
  for (const i of [strength, hardness, chloride]) expect(belief.mean[i]).toBeCloseTo(12, 9)
})

test('carry-off alone lowers the level and changes nothing of the mix', () => {
  const belief = tank(0.9, 6, { carryOff: 0.01 })
  flow(belief, 50)
  expect(belief.mean[fill]).toBeCloseTo(0.4, 12)
  for (const i of [strength, hardness, chloride]) expect(belief.mean[i]).toBeCloseTo(6, 9)
})

test('both together, nothing poured: what evaporates concentrates by the power of its share of the losses', () => {
  // dV/dt = −(e + d), dM/dt = −d M / V: M ∝ V^(d / (e + d)). With 3 : 1 and half of the volume left: 2^(3/4) as strong.
  const belief = tank(1, 6, { evaporation: 0.03, carryOff: 0.01 })
  flow(belief, 12.5)
  expect(belief.mean[fill]).toBeCloseTo(0.5, 12)
  expect(belief.mean[strength]).toBeCloseTo(6 * 2 ** 0.75, 9)
})

test('Boyce and DiPrima, example 1: within 2 percent of the limit after 130.4 minutes', () => {
  // 100 gal, 3 gal/min of 1/4 lb/gal in and of the mix out, 50 lb at first: Q = 25 + 25 e^(−0.03 t) = 25.5.
  const belief = tank(1, 0.5, { carryOff: 0.03 })
  run(belief, 130.400767, 0.03, 0.25)
  close(contents(belief, 100), 25.5)
  close(belief.mean[fill]!, 1, 1e-12)
})

test('Boyce and DiPrima, the same with 8.69 gal/min: within 2 percent after 45 minutes', () => {
  const belief = tank(1, 0.5, { carryOff: 0.08693384 })
  run(belief, 45, 0.08693384, 0.25)
  close(contents(belief, 100), 25.5)
})

test('Boyce and DiPrima, problem 1: 200 L of dye rinsed with 2 L/min are at 1 percent after 460.517 minutes', () => {
  const belief = tank(1, 1, { carryOff: 0.01 })
  run(belief, 460.517, 0.01, 0)
  close(belief.mean[chloride]!, 0.01)
})

test('Boyce and DiPrima: 200 gal in a tank of 500 that fills by 1 gal/min runs over with 484 lb, 0.968 lb/gal', () => {
  const belief = tank(200 / 500, 0.5, { carryOff: 2 / 500 })
  run(belief, 300, 3 / 500, 1)
  close(belief.mean[fill]!, 1, 1e-9)
  close(contents(belief, 500), 484)
  close(belief.mean[strength]!, 0.968)
})

test('Zill: 300 gal in a tank of 400 hold 490.625 lb when it is full, and 587.37 lb at 150 minutes, running over', () => {
  const belief = tank(300 / 400, 50 / 300, { carryOff: 2 / 400 })
  run(belief, 100, 3 / 400, 2)
  close(contents(belief, 400), 490.625)
  belief.mean[carryOff] = Math.log(3 / 400)
  run(belief, 50, 3 / 400, 2)
  close(contents(belief, 400), 587.369879)
})

test('Trench, example 4.2.3: 600 gal, 4 gal/min of 1/2 lb/gal: 300 − 260 / e lb after 150 minutes', () => {
  const belief = tank(1, 40 / 600, { carryOff: 4 / 600 })
  run(belief, 150, 4 / 600, 0.5)
  close(contents(belief, 600), 300 - 260 / Math.E)
})

test('Trench, example 4.2.4: 200 L in a tank of 500 run over at 150 minutes with 109 g, 0.218 g/L', () => {
  const belief = tank(200 / 500, 10 / 200, { carryOff: 2 / 500 })
  run(belief, 150, 4 / 500, 0.25)
  close(contents(belief, 500), 109)
  close(belief.mean[chloride]!, 0.218)
})

test('Dawkins: an inflow that swings, (1 + cos t) / 5 lb/gal: 279.797 lb when the tank of 1500 gal runs over', () => {
  const belief = tank(600 / 1500, 5 / 600, { carryOff: 6 / 1500 })
  run(belief, 300, 9 / 1500, (t) => (1 + Math.cos(t)) / 5)
  // The swing has 42 parts in a period: their midpoints miss (2π / 84)² / 24 of what it brings.
  close(contents(belief, 1500), 279.7974148, 1e-4 * 279.797)
})

test('Zill and Cullen: 70 L at 0.3 kg/L, 8 L/min at 0.1 in, 6 out: 17.379 kg after 5 minutes', () => {
  const belief = tank(70 / 2000, 0.3, { carryOff: 6 / 2000 })
  run(belief, 5, 8 / 2000, 0.1)
  close(contents(belief, 2000), 17.37890625)
})

test('100 gal in a tank of 400, 5 gal/s in, 3 out: full after 150 s with 393.75 lb', () => {
  const belief = tank(100 / 400, 0.5, { carryOff: 3 / 400 })
  run(belief, 150, 5 / 400, 1)
  close(contents(belief, 400), 393.75)
})

test('20 L in a tank of 100, 5 L/min at 10 g/L in, 3 out: 982.1 g when it runs over', () => {
  const belief = tank(20 / 100, 0, { carryOff: 3 / 100 })
  run(belief, 40, 5 / 100, 10)
  close(contents(belief, 100), 1000 - 8 * Math.sqrt(5))
})

test('Polymath 1.13: 20 kg/min at 10 percent in, 10 out, 1000 kg at 20 percent: 13.906 percent after 60 minutes', () => {
  const belief = tank(1000 / 1600, 20, { carryOff: 10 / 1600 })
  run(belief, 60, 20 / 1600, 10)
  close(belief.mean[strength]!, 13.90625)
  close(contents(belief, 1600, strength) / 100, 222.5)
})

test('two tanks in a row: the second holds most, 50 / e lb, after one turnover', () => {
  // 100 gal each, 2 gal/min of water into the first, of its mix into the second: A = 50 e^(−t/50), B = t e^(−t/50).
  const [first, second] = [tank(1, 0.5, {}), tank(1, 0, {})]
  const share = 50 / 50 / parts
  for (let k = 0; k < parts; k++) {
    pourShare(first, share / 2, 0, pourOf(0))
    const between = first.mean[chloride]!
    takeOut(first, share, 0)
    pourShare(first, share / 2, 0, pourOf(0))
    pourShare(second, share / 2, 0, pourOf(between))
    takeOut(second, share, 0)
    pourShare(second, share / 2, 0, pourOf(between))
  }
  close(contents(first, 100), 50 / Math.E)
  close(contents(second, 100), 50 / Math.E)
})

/** Months of a sump that is topped up to its mark again and again, each time with what it lost. */
function months(belief: Belief, days: number, timesADay: number, pour: Pour): void {
  for (let k = 0; k < days * timesADay; k++) {
    const dt = 1 / timesADay
    const before = belief.mean[fill]!
    pass(belief, { days: dt, evaporation: dt, carryOff: dt })
    pourShare(belief, before - belief.mean[fill]!, 0, pour)
  }
}

test('cooling tower: evaporation 15 and blow-down 3.75 make five cycles, in chloride and in hardness', () => {
  // The same losses of a sump of 1000 L; hardness below what soaps drop out, with no gain from chips.
  const belief = tank(1, 20, { evaporation: 0.015, carryOff: 0.00375 })
  months(belief, 2400, 12, { ...pourOf(20), strength: 0 })
  // Just after a top-up the minerals are at the bottom of their saw: less by half of what evaporates between two.
  const saw = 0.015 / 12 / 2
  close(belief.mean[chloride]!, 5 * 20 * (1 - saw), 1e-4 * 100)
  close(belief.mean[hardness]!, 5 * 20 * (1 - saw), 1e-4 * 100)
})

test('the hardness a sump settles at is (evaporation + carry-off) / carry-off times that of its top-ups', () => {
  for (const [e, d] of [
    [0.016, 0.006],
    [0.01, 0.01],
    [0.004, 0.012],
  ] as const) {
    const belief = tank(1, 30, { evaporation: e, carryOff: d })
    months(belief, 12 / d, 12, { ...pourOf(30), strength: 0 })
    close(belief.mean[hardness]!, (30 * (e + d)) / d, (e / 12) * ((30 * (e + d)) / d))
  }
})

test('top-ups at target × carry-off / (evaporation + carry-off) hold the target, but for what is used up', () => {
  // With depletion k the strength that holds C is C (d + k) / (e + d); topped up at C d / (e + d) it comes to C d / (d + k).
  const [e, d, target] = [0.016, 0.006, 8]
  const pour = { ...pourOf(0), strength: (target * d) / (e + d) }
  const belief = tank(1, target, { evaporation: e, carryOff: d })
  months(belief, 1200, 12, pour)
  close(belief.mean[strength]!, (target * d) / (d + chemistry.depletion), 1e-3 * target)
  const held = tank(1, target, { evaporation: e, carryOff: d })
  months(held, 1200, 12, { ...pour, strength: (target * (d + chemistry.depletion)) / (e + d) })
  close(held.mean[strength]!, target, 1e-3 * target)
})

test('from deionised water on the minerals wash out with the time constant volume / carry-off', () => {
  // 200 L, 2 L a day carried off: after 100 days 1 / e of them are left.
  const belief = tank(1, 100, { evaporation: 0.03, carryOff: 0.01 })
  months(belief, 100, 12, { ...pourOf(0) })
  close(belief.mean[chloride]!, 100 / Math.E, (0.03 / 12) * 100)
})
