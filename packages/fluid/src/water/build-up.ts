import type { Days, Litres, LitresPerDay, MgPerLitre, MilliSiemensPerCm, Percent } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'
import { after, type Course, dayAt, ratio, steady } from '../sump/course.ts'

/** What evaporation leaves behind, each in its own unit; null is unknown. */
export interface Minerals {
  /** As CaCO3. */
  hardness: MgPerLitre | null
  chloride: MgPerLitre | null
  /** At 25 °C, of the minerals alone. */
  conductivity: MilliSiemensPerCm | null
}

export type BuildUpMineral = keyof Minerals
export const buildUpMinerals: readonly BuildUpMineral[] = ['hardness', 'chloride', 'conductivity']

/** A water that top-ups are made with from a day on. */
export interface TopUpWater extends Minerals {
  id: string
  /** Day 0 for the first, rising from water to water. */
  from: Days
  /** Of the top-ups made with it, 0 to 100. */
  strength: Percent
}

export interface BuildUpQuestion {
  /** At the full mark, above 0. */
  fillVolume: Litres
  /** In the sump now, at most `fillVolume`: what is missing is filled up on day 0. */
  volume: Litres
  evaporation: LitresPerDay
  carryOff: LitresPerDay
  /** Of the mix as it stands now. */
  now: Minerals
  /** At least one. */
  waters: readonly TopUpWater[]
  /** Of the mix, the most that is wanted; null where there is none. */
  limits: Minerals
  /** To report, each from 0 on. */
  days: readonly Days[]
}

/** When a mineral is at its limit, days from now; null where it never is, is unknown, or has no limit. */
export interface LimitDays {
  reached: Days | null
  /** From when on, after that, it lies under the limit again. */
  left: Days | null
}

export interface BuildUp {
  /** How many times richer than its top-up the sump becomes; null without carry-off. */
  cycles: number | null
  /** What each mineral approaches on the last of the waters; null without carry-off or where unknown. */
  steady: Minerals
  series: ({ day: Days } & Minerals)[]
  atLimit: Record<BuildUpMineral, LimitDays>
}

/**
 * Minerals of a sump under any sequence of waters: tap until today and deionised from tomorrow, say. Topped up all the time, its volume V stays at
 * the mark, and on each stretch with top-ups of strength x from water of mineral h
 *
 *     V · dN/dt = (evaporation + carryOff) · (1 − x/100) · h − carryOff · N
 *
 * is solved exactly, each stretch beginning where the one before ended.
 *
 * All is judged at the full mark. A sump read low holds its minerals in less water; filled up it stands at
 *
 *     N at the mark = (volume · N + (fillVolume − volume) · (1 − x/100) · h) / fillVolume
 *
 * Chloride is the better tracer: nothing in a sump makes or takes it. Hardness falls out as scum and magnesium chips add to it. Conductivity counts
 * all salts and some of the concentrate, and adds up only roughly.
 *
 * Source: plain mass balance.
 *
 * @throws {RangeError} a quantity outside the range its field gives, no water, waters whose days do not rise from 0
 */
export function buildUp(question: BuildUpQuestion): BuildUp {
  requireBuildUp(question)
  const { evaporation, carryOff, waters, limits, days } = question
  const courses = mapMinerals((mineral) => coursesOf(question, mineral))
  return {
    cycles: ratio(evaporation + carryOff, carryOff),
    steady: mapMinerals((mineral) => {
      const last = courses[mineral]?.at(-1)
      return last === undefined ? null : steady(last.course)
    }),
    series: days.map((day) => ({ day, ...mapMinerals((mineral) => valueAt(courses[mineral], day)) })),
    atLimit: mapMinerals((mineral) => limitDays(courses[mineral], limits[mineral])),
  }

  function valueAt(stretches: Stretch[] | null, day: Days): number | null {
    if (stretches === null) return null
    const stretch = stretches[waters.findLastIndex(({ from }) => from <= day)]!
    return after(stretch.course, day - stretch.from)
  }
}

/** A mineral's course from one change of water to the next. */
interface Stretch {
  from: Days
  /** Infinity for the last. */
  to: Days
  course: Course
}

/** Null where the mineral is unknown now or in one of the waters. */
function coursesOf(question: BuildUpQuestion, mineral: BuildUpMineral): Stretch[] | null {
  const { fillVolume, volume, evaporation, carryOff, now, waters } = question
  const brought = waters.map((water) => (water[mineral] === null ? null : (1 - water.strength / 100) * water[mineral]))
  if (now[mineral] === null || brought.includes(null)) return null
  let start = (volume * now[mineral] + (fillVolume - volume) * brought[0]!) / fillVolume
  return waters.map(({ from }, index) => {
    const to = waters[index + 1]?.from ?? Number.POSITIVE_INFINITY
    const gain = ((evaporation + carryOff) * brought[index]!) / fillVolume
    const course = { start, gain, loss: carryOff / fillVolume }
    if (Number.isFinite(to)) start = after(course, to - from)
    return { from, to, course }
  })
}

function limitDays(stretches: Stretch[] | null, limit: number | null): LimitDays {
  if (stretches === null || limit === null) return { reached: null, left: null }
  const reached = crossing(stretches, 0, (course) => dayAt(course, limit))
  if (reached === null) return { reached, left: null }
  return { reached, left: crossing(stretches, reached, (course) => dayUnder(course, limit)) }
}

/** The first day from `since` on that a stretch's own day falls into it. */
function crossing(stretches: readonly Stretch[], since: Days, dayOf: (course: Course) => Days | null): Days | null {
  for (const { from, to, course } of stretches) {
    if (to <= since) continue
    const begin = Math.max(from, since)
    const day = dayOf({ ...course, start: after(course, begin - from) })
    if (day !== null && begin + day < to) return begin + day
  }
  return null
}

/** When a course that falls comes below the limit: the mirror image of a rise. At the limit and not falling it stays there. */
function dayUnder({ start, gain, loss }: Course, limit: number): Days | null {
  return gain - loss * start >= 0 ? null : dayAt({ start: -start, gain: -gain, loss }, -limit)
}

function mapMinerals<T>(value: (mineral: BuildUpMineral) => T): Record<BuildUpMineral, T> {
  return { hardness: value('hardness'), chloride: value('chloride'), conductivity: value('conductivity') }
}

function requireBuildUp({
  fillVolume,
  volume,
  evaporation,
  carryOff,
  now,
  waters,
  limits,
  days,
}: BuildUpQuestion): void {
  requireRange('fillVolume', fillVolume, { above: 0 })
  requireRange('volume', volume, { min: 0, max: fillVolume })
  requireRange('evaporation', evaporation, { min: 0 })
  requireRange('carryOff', carryOff, { min: 0 })
  requireMinerals('now', now)
  requireMinerals('limits', limits)
  requireRange('waters', waters.length, { min: 1 })
  for (const [index, { from, strength, ...water }] of waters.entries()) {
    if (index === 0 && from !== 0) throw new OutOfRange('waters.0.from', from, '0')
    requireRange(`waters.${index}.from`, from, { min: 0, above: waters[index - 1]?.from })
    requireRange(`waters.${index}.strength`, strength, { min: 0, max: 100 })
    requireMinerals(`waters.${index}`, water)
  }
  for (const [index, day] of days.entries()) requireRange(`days.${index}`, day, { min: 0 })
}

function requireMinerals(name: string, minerals: Minerals): void {
  for (const mineral of buildUpMinerals) {
    if (minerals[mineral] !== null) requireRange(`${name}.${mineral}`, minerals[mineral], { min: 0 })
  }
}
