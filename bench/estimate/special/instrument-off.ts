import { chanceOf } from '../simulate/random.ts'
import { fluidOf, plainBook, sumpOf, timeAt } from './plain-book.ts'
import { type QuietSump, quietSump } from './quiet-sump.ts'
import type { Near, Special } from './special.ts'

export interface InstrumentOffExpected {
  /** The only doubt there may be: one, of the kind `instrument`, that names most of these entries; none of another kind. */
  entries: string[]
  /** °Brix by which all of them are high. */
  offset: number
  concentration: Record<string, Near>
}

/** Day of the round on which the refractometer is off. */
const offDay = 84

/**
 * From 6 to 10 quiet sumps, twelve weeks of good readings, and then one round on which the refractometer shows 0.4 °Brix
 * too much. Nothing else is wrong. `roundsAfter` good rounds follow, at 0 the round that is off is the last.
 */
export function instrumentOff({
  sumps: count = 8,
  roundsAfter = 0,
  offset = 0.4,
  seed = 1,
} = {}): Special<InstrumentOffExpected> {
  const lastDay = offDay + Math.floor((roundsAfter + 1) / 2) * 3 + Math.floor(roundsAfter / 2) * 4
  const chance = chanceOf(seed, 61)
  const fluids = [fluidOf('a', 1.1, 7.5), fluidOf('b', 1.6, 8)]
  const sumps = Array.from({ length: count }, (_, i): QuietSump => {
    const fluid = fluids[i % 2]!
    const mark = 120 + 40 * i
    const { id, brixFactor, limits } = fluid
    const losses = { evaporation: mark * chance.between(0.014, 0.022), carryOff: mark * chance.between(0.006, 0.011) }
    return { id: `s${i + 1}`, fluid: id, brixFactor, target: limits.concentration.target, mark, ...losses }
  })
  const quiet = sumps.map((sump) =>
    quietSump(sump, lastDay, ({ day, brix }) => brix + chance.normal(0.05) + (day === offDay ? offset : 0)),
  )
  const book = plainBook(
    fluids,
    sumps.map(({ id, fluid, mark }) => sumpOf(id, fluid, mark)),
    quiet.flatMap(({ written }) => written),
  )
  const offAt = new Date(timeAt(offDay, 6)).toISOString()
  return {
    story: `One refractometer ${offset} °Brix high over a whole round of ${count} sumps, nothing else wrong.`,
    book,
    atMs: timeAt(lastDay, 12),
    expected: {
      entries: book.entries.filter(({ kind, at }) => kind === 'reading' && at === offAt).map(({ id }) => id),
      offset,
      concentration: Object.fromEntries(sumps.map(({ id }, i) => [id, { value: quiet[i]!.percent, within: 0.35 }])),
    },
  }
}
