import { doubtsOf, mixAfter, mixNow, type Reader, untouched } from '@sumpbook/fluid'
import { benchFor } from '../estimate/estimate-document.ts'
import type { ShopStanding } from '../estimate/shop-standing.ts'
import { adviceBy } from '../estimate/sump-recipe.ts'
import type { Sump } from '../schema/things/index.ts'
import { conditionOf, consequence, distance, type Flickering, isClearOf, isListed, type Judging } from './condition.ts'
import type { LastReadings } from './last-readings.ts'
import { tellsOf, tellsStrength } from './sump-now.ts'
import type { Condition } from './today.ts'

/** What a sump stood at when a shift began, as far as the list of the shift goes by it. */
export interface SumpThen {
  condition: Condition
  /** What it comes to by the end of the shift if nothing is done. */
  byEnd: Condition
  /** Of which conditions it was clear, not only just on the other side of their limits. */
  clearOf: ReadonlySet<Flickering>
  /** The gravest first: consequence, then how far outside its band. */
  rank: readonly [number, number]
}

/** Figures are compared, not said. */
const unsaid: Reader = { units: 'metric' }
const flickering: readonly Flickering[] = ['lean', 'rich', 'low-level']

/** A sump at an instant, by the records up to then; whether it was due to be read is not looked at. */
export function sumpThen(standing: ShopStanding, sump: Sump, read: LastReadings, shiftDays: number): SumpThen {
  const { shop, clock, ms } = standing
  const bench = benchFor(standing, sump)
  const asked = untouched(shop, sump.id, clock.at(ms))
  const isTold = asked.sump.dataAt !== null
  const isStrengthTold = bench.class !== 'straight-oil' && tellsStrength(read)
  const { markVolume, ...mix } = mixNow(asked)
  const doubts = doubtsOf(asked)
  const judge = ({ concentration, volume }: typeof mix): Judging => {
    const told = isStrengthTold ? concentration : null
    const tells = tellsOf({ now: { volume, markVolume }, doubts }, { concentration: told, isTold })
    const { recipe } = adviceBy(tells, bench, unsaid)
    return { recipe, concentration: told, bench, volume: isTold ? volume : null, mark: isTold ? markVolume : null }
  }
  const judged = judge(mix)
  const condition = conditionOf(judged, false)
  return {
    condition,
    // Only what wants nothing yet can come to want something.
    byEnd: isListed(condition) ? condition : conditionOf(judge(mixAfter(asked, shiftDays)), false),
    clearOf: new Set(flickering.filter((one) => isClearOf(one, judged))),
    rank: [consequence[condition], distance(judged)],
  }
}
