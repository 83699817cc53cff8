import type { Chance } from './random.ts'
import type { Chemistry } from './tank.ts'

/** What is true of a sump and written nowhere, and the habits of who looks after it. */
export interface Traits {
  /** Litres at the full mark with nothing settled, pumps stopped. */
  markVolume: number
  /** What the plate says of it. */
  plateVolume: number
  /** Share of the mark's volume that is out in lines while the pumps run. */
  holdUp: number
  /** Litres of sludge that settle in a day. */
  sludgeADay: number
  /** °Brix of tramp oil and dirt gained in a day. */
  oilADay: number
  chemistry: Chemistry
  /** Percent that titration reads too high, at the start and a day. */
  titrationBias: number
  titrationBiasADay: number
  titrates: boolean
  roundDays: number[]
  /** Hour of the round, before the shift or in it. */
  roundHour: number
  looksAtLevel: boolean
  usesDipstick: boolean
  stripEveryDays: number
  filling: 'to-mark' | 'buckets' | 'meter'
  /** Share of the mark under which somebody tops up. */
  topsUpUnder: number
  /** Percent always poured, or null where it is worked out. */
  fixedStrength: number | null
  startsWithCharge: boolean
  /** Day of a cleanout and fresh charge, or null. */
  changesOn: number | null
  changesFluid: boolean
  skimEveryDays: number | null
  /** Litres a day that leak in, and when; or null. */
  leak: { from: number; to: number; litresADay: number } | null
}

const lasts = 182

export function drawTraits(chance: Chance, central: boolean): Traits {
  const markVolume = central ? chance.between(2500, 8000) : 180 * chance.factor(0.55)
  const farOff = chance.happens(0.35)
  const off = farOff ? chance.between(0.2, 0.4) : chance.between(0, 0.1)
  const twice = chance.happens(0.5)
  const changes = chance.happens(0.15)
  const leaks = chance.happens(0.03)
  const leakFrom = Math.floor(chance.between(20, lasts - 30))
  return {
    markVolume,
    plateVolume: round(markVolume * (1 + off * (chance.happens(0.7) ? 1 : -1)), central ? 100 : 10),
    holdUp: chance.between(0.04, 0.25),
    sludgeADay: (markVolume * chance.between(0, 0.08)) / lasts,
    oilADay: chance.between(0, 0.6) / lasts,
    chemistry: {
      depletion: chance.between(0, 0.002),
      scum: chance.between(0, 0.008),
      chips: chance.between(0, 1.2),
    },
    titrationBias: chance.normal(0.25),
    titrationBiasADay: chance.between(0, 0.4) / lasts,
    titrates: chance.happens(0.3),
    roundDays: twice ? [0, 3] : [Math.floor(chance.between(0, 5))],
    roundHour: chance.happens(0.65) ? 5.5 : 10,
    looksAtLevel: chance.happens(0.6),
    usesDipstick: chance.happens(0.4),
    stripEveryDays: Math.round(chance.between(14, 28)),
    filling: chance.happens(0.25) ? 'to-mark' : chance.happens(0.25) ? 'meter' : 'buckets',
    topsUpUnder: chance.between(0.86, 0.96),
    fixedStrength: chance.happens(0.25) ? round(chance.between(3, 6), 0.5) : null,
    startsWithCharge: changes || chance.happens(0.6),
    changesOn: changes ? Math.floor(chance.between(40, lasts - 20)) : null,
    changesFluid: chance.happens(0.6),
    skimEveryDays: chance.happens(0.5) ? Math.round(chance.between(25, 60)) : null,
    leak: leaks ? { from: leakFrom, to: leakFrom + 18, litresADay: markVolume * chance.between(0.02, 0.05) } : null,
  }
}

export const round = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6))
