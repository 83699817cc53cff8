import type { BenchSump } from '../book.ts'
import type { Chance } from '../simulate/random.ts'
import { spell } from './calendar.ts'
import type { Wear } from './contents.ts'
import { toStep } from './stores.ts'
import type { Nature } from './wander.ts'

/** What is so at one machine, whether anybody knows it or not. */
export interface Machine {
  id: string
  central: boolean
  /** Litres at the full mark, clean, pumps stopped. */
  mark: number
  /** What the plate says that would be. */
  plate: number
  /** Litres out in lines and conveyor while it runs. */
  holdUp: number
  /** Litres of room that sludge takes more, a day. */
  sludge: number
  /** °Brix that tramp oil feigns more, a day. */
  oil: number
  wear: Wear
  nature: Nature
  /** Spells in which it stands. */
  down: { from: number; to: number }[]
  habits: Habits
}

export interface Habits {
  /** Days of the week, from 0, and the hour of the look. */
  lookDays: number[]
  lookHour: number
  looksAtLevel: 'never' | 'sight' | 'dipstick'
  stripEvery: number
  /** Percent by which this machine's titration is off, or null where nobody titrates. */
  titration: number | null
  writesHours: boolean
  fillsBy: 'mark' | 'buckets' | 'meter'
  /** What is poured as a rule, as a multiple of what would hold the target. */
  ruleOfThumb: number
  skimEvery: number | null
  drawsOffEvery: number | null
  /** Day of the first charge of the book, if there is one. */
  chargedOn: number | null
  /** Day of a change, and whether another product comes. */
  change: { on: number; otherProduct: boolean } | null
}

/** Evaporation and carry-off in a full working day, as shares of the mark. */
function drawNature(chance: Chance, mark: number): Nature {
  return {
    evaporation: mark * Math.min(0.035, 0.022 * chance.factor(0.4)),
    carryOff: mark * Math.min(0.02, 0.011 * chance.factor(0.4)),
    standing: chance.between(0.2, 0.4),
  }
}

export function drawMachine(chance: Chance, id: string, central: boolean, shiftFrom: number): Machine {
  const mark = central ? chance.between(2000, 9000) : Math.exp(chance.between(Math.log(90), Math.log(700)))
  const off = chance.happens(1 / 3) ? chance.between(0.2, 0.4) : chance.between(0, 0.1)
  return {
    id,
    central,
    mark,
    plate: toStep(mark * (chance.happens(0.5) ? 1 + off : 1 - off), central ? 50 : 5),
    holdUp: mark * chance.between(0.03, 0.15),
    sludge: (mark * chance.between(0, 0.04)) / 182,
    oil: chance.between(0, 0.35) / 182,
    wear: {
      depletion: chance.between(0, 0.0015),
      scum: chance.between(0, 0.003),
      chips: chance.happens(0.2) ? chance.between(0.2, 1) : 0,
    },
    nature: drawNature(chance, mark),
    down: chance.happens(0.3) ? [spell(chance, 3, 10)] : [],
    habits: drawHabits(chance, central, shiftFrom),
  }
}

function drawHabits(chance: Chance, central: boolean, shiftFrom: number): Habits {
  return {
    lookDays: chance.pick([[0, 3], [0, 3], [1, 4], [1, 4], [0], [2]]),
    lookHour: chance.happens(0.7) ? shiftFrom - 1 : shiftFrom + 3,
    looksAtLevel: chance.happens(0.4) ? 'never' : chance.happens(0.6) ? 'sight' : 'dipstick',
    stripEvery: 7 * chance.pick([2, 2, 3, 4]),
    titration: chance.happens(0.3) ? chance.normal(0.2) : null,
    writesHours: chance.happens(0.25),
    fillsBy: chance.happens(0.25) ? 'mark' : central || chance.happens(0.2) ? 'meter' : 'buckets',
    ruleOfThumb: chance.factor(0.2),
    skimEvery: chance.happens(0.4) ? Math.round(chance.between(20, 50)) : null,
    drawsOffEvery: chance.happens(0.08) ? Math.round(chance.between(30, 60)) : null,
    chargedOn: chance.happens(0.65) ? Math.floor(chance.between(0, 5)) : null,
    change: chance.happens(0.12)
      ? { on: Math.floor(chance.between(35, 160)), otherProduct: chance.happens(0.5) }
      : null,
  }
}

export function machineInBook(chance: Chance, machine: Machine, fluid: string): BenchSump {
  const { id, central, plate, mark, holdUp, habits } = machine
  const brim = toStep(plate * 1.2, 1)
  return {
    id,
    name: `Lathe ${id}`,
    kind: central ? 'central' : 'stand-alone',
    fluid,
    capacity: brim,
    ...(chance.happens(0.9) ? { fillVolume: plate, minVolume: toStep(plate * 0.35, 1) } : {}),
    ...(chance.happens(0.6) ? { holdUp: toStep((holdUp * plate * chance.factor(0.15)) / mark, 1) } : {}),
    ...(habits.looksAtLevel === 'dipstick' ? { dipTable: [[0, 0] as [number, number], [600, brim]] } : {}),
  }
}
