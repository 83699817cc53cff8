import { requireRange } from '../require.ts'

/** A stretch of a job that nothing interrupts. */
export interface Stretch {
  name: string
  hours: number
  /** What it keeps busy: `{ person: 1, 'pump-out': 1 }`; nothing while cleaner circulates. */
  needs: Readonly<Record<string, number>>
}

/** One machine's stretches, in their order. */
export interface ParallelJob {
  id: string
  stretches: readonly Stretch[]
}

export interface ParallelAsked {
  jobs: readonly ParallelJob[]
  /** How many there are of everything that stretches need. */
  capacity: Readonly<Record<string, number>>
  /** Places that the search looks at before it stops; 2,000 without it. */
  most?: number
}

/** When something begins and ends, in hours from the start. */
export interface Span {
  start: number
  finish: number
}

export interface ParallelPlan {
  jobs: (Span & { id: string; stretches: (Span & { name: string })[] })[]
  /** When the last job ends. */
  finish: number
  /** Hours for which machines stand, all together. */
  downtime: number
  /** No plan ends earlier. */
  lowerBound: number
  /** Whether it is known that none ends earlier than `finish`. */
  exact: boolean
}

const close = 1e-9

/**
 * Jobs side by side with few pumps and few people: when each stretch begins so that the last job ends as early as can be.
 *
 * Placing stretches one after another, each as early as its job and what it needs allow, makes every active plan for some order, and one of
 * them is best; a plan by each of four plain rules comes first, then orders are searched depth first, and a branch is left where no plan in it can end earlier:
 *
 *     bound = max(longest rest of a job, for each thing needed: earliest start + (hours × need left) / capacity + shortest tail)
 *
 * With up to about three machines all orders are looked at; with more the search stops after `most` places and `lowerBound` says how
 * far from the best the plan may be at most. Of plans that end together the one with less standing is kept, among those looked at.
 *
 * Source: A. Sprecher, R. Kolisch and A. Drexl, Eur. J. Oper. Res. 80 (1995) 94–102 (active schedules), from memory.
 *
 * @throws {RangeError} hours below 0, a need above what there is, more than 30 jobs
 */
export function parallelPlan({ jobs, capacity, most = 2_000 }: ParallelAsked): ParallelPlan {
  requireJobs(jobs, capacity)
  const total = jobs.reduce((sum, { stretches }) => sum + stretches.length, 0)
  const root: Placed = { next: jobs.map(() => 0), ready: jobs.map(() => 0), spans: jobs.map(() => []), busy: new Map() }
  const lowerBound = boundOf(root, jobs, capacity)
  let best: Found | null = null
  const keep = (placed: Placed) => {
    const found = { placed, finish: Math.max(0, ...placed.ready), downtime: standing(placed) }
    if (best === null || isBetter(found, best)) best = found
  }
  for (const rule of rules) keep(byRule(root, rule, { jobs, capacity }))
  let looked = 0
  let cut = false
  const seen = new Set<string>()
  const search = (placed: Placed, depth: number): void => {
    if (depth === total) {
      keep(placed)
      return
    }
    if (looked >= most) {
      cut = true
      return
    }
    looked += 1
    for (const branch of branchesOf(placed, jobs, capacity)) {
      // Two orders may come to the same places.
      const places = branch.placed.spans.map((spans) => spans.map(({ start }) => start).join()).join(';')
      if (seen.has(places)) continue
      seen.add(places)
      const atLeast = { finish: boundOf(branch.placed, jobs, capacity), downtime: standing(branch.placed) }
      if (isBetter(atLeast, best!)) search(branch.placed, depth + 1)
    }
  }
  search(root, 0)
  const { placed, finish, downtime } = best!
  return {
    jobs: jobs.map(({ id, stretches }, j) => ({
      id,
      start: placed.spans[j]![0]?.start ?? 0,
      finish: placed.ready[j]!,
      stretches: stretches.map(({ name }, s) => ({ name, ...placed.spans[j]![s]! })),
    })),
    finish,
    downtime,
    lowerBound,
    exact: !cut || finish <= lowerBound + close,
  }
}

interface Found {
  placed: Placed
  finish: number
  downtime: number
}

/** Earlier in its end, or as early with less standing. */
const isBetter = (a: Omit<Found, 'placed'>, b: Omit<Found, 'placed'>) =>
  a.finish < b.finish - close || (a.finish <= b.finish + close && a.downtime < b.downtime - close)

/** Which branch is followed: the search begins with a plan by each of these. */
const rules: readonly ((a: Branch, b: Branch) => number)[] = [
  (a, b) => a.start - b.start || a.rest - b.rest,
  (a, b) => a.start - b.start || b.tail - a.tail,
  (a, b) => b.tail - a.tail || a.start - b.start,
  (a, b) => a.finish - b.finish || a.rest - b.rest,
]

function byRule(
  root: Placed,
  rule: (typeof rules)[number],
  { jobs, capacity }: Pick<ParallelAsked, 'jobs' | 'capacity'>,
): Placed {
  let placed = root
  for (;;) {
    const [first] = branchesOf(placed, jobs, capacity).sort(rule)
    if (first === undefined) return placed
    placed = first.placed
  }
}

interface Placed {
  /** The first stretch of each job that has no place yet. */
  next: readonly number[]
  /** When each job's last placed stretch ends. */
  ready: readonly number[]
  spans: readonly (readonly Span[])[]
  /** By thing needed: what of it is taken when. */
  busy: ReadonlyMap<string, readonly (Span & { units: number })[]>
}

/** From the first start of each job to the end of what is placed of it. */
const standing = ({ spans, ready }: Placed) =>
  spans.reduce((sum, placed, j) => sum + (placed.length === 0 ? 0 : ready[j]! - placed[0]!.start), 0)

/** A stretch at its place, and the hours that its job still has with it. */
interface Branch extends Span {
  placed: Placed
  rest: number
  /** The same without it. */
  tail: number
}

/** Each job's next stretch at its earliest place, the earliest first; jobs that are alike and stand alike are one. */
function branchesOf(placed: Placed, jobs: readonly ParallelJob[], capacity: ParallelAsked['capacity']): Branch[] {
  const seen = new Set<string>()
  const branches: Branch[] = []
  jobs.forEach((job, j) => {
    const n = placed.next[j]!
    if (n === job.stretches.length) return
    const likeness = JSON.stringify([job.stretches, n, placed.spans[j]])
    if (seen.has(likeness)) return
    seen.add(likeness)
    const stretch = job.stretches[n]!
    const start = earliest(stretch, placed.ready[j]!, placed.busy, capacity)
    const span = { start, finish: start + stretch.hours }
    const rest = job.stretches.slice(n).reduce((sum, { hours }) => sum + hours, 0)
    branches.push({ ...span, placed: withSpan(placed, j, stretch, span), rest, tail: rest - stretch.hours })
  })
  return branches.sort(rules[1]!)
}

function withSpan(placed: Placed, j: number, { needs }: Stretch, span: Span): Placed {
  const busy = new Map(placed.busy)
  if (span.finish > span.start) {
    for (const [thing, units] of Object.entries(needs)) {
      if (units > 0) busy.set(thing, [...(busy.get(thing) ?? []), { ...span, units }])
    }
  }
  return {
    next: placed.next.with(j, placed.next[j]! + 1),
    ready: placed.ready.with(j, span.finish),
    spans: placed.spans.with(j, [...placed.spans[j]!, span]),
    busy,
  }
}

/** The first time from `from` on at which everything needed is free for as long as it takes: then, or when something ends. */
function earliest(
  { hours, needs }: Stretch,
  from: number,
  busy: Placed['busy'],
  capacity: ParallelAsked['capacity'],
): number {
  const wanted = Object.entries(needs).filter(([, units]) => units > 0)
  const ends = wanted.flatMap(([thing]) => (busy.get(thing) ?? []).map(({ finish }) => finish))
  const times = [from, ...ends.filter((end) => end > from)].sort((a, b) => a - b)
  const isFree = (start: number) =>
    wanted.every(([thing, units]) => peak(busy.get(thing) ?? [], start, start + hours) + units <= capacity[thing]!)
  return times.find(isFree)!
}

/** The most of a thing that is taken at one time between two; it can only rise where something begins. */
function peak(taken: readonly (Span & { units: number })[], from: number, until: number): number {
  const within = taken.filter(({ start, finish }) => start < until - close && finish > from + close)
  const at = (time: number) =>
    within.reduce(
      (sum, { start, finish, units }) => (start <= time + close && finish > time + close ? sum + units : sum),
      0,
    )
  return Math.max(0, ...[from, ...within.map(({ start }) => Math.max(start, from))].map(at))
}

function boundOf(placed: Placed, jobs: readonly ParallelJob[], capacity: ParallelAsked['capacity']): number {
  let bound = Math.max(0, ...placed.ready)
  const loads = new Map<string, { work: number; head: number; tail: number }>()
  jobs.forEach(({ stretches }, j) => {
    let head = placed.ready[j]!
    const left = stretches.slice(placed.next[j]!)
    let tail = left.reduce((sum, { hours }) => sum + hours, 0)
    bound = Math.max(bound, head + tail)
    for (const { hours, needs } of left) {
      tail -= hours
      for (const [thing, units] of Object.entries(needs)) {
        if (units === 0 || hours === 0) continue
        const load = loads.get(thing) ?? { work: 0, head: Number.POSITIVE_INFINITY, tail: Number.POSITIVE_INFINITY }
        loads.set(thing, {
          work: load.work + hours * units,
          head: Math.min(load.head, head),
          tail: Math.min(load.tail, tail),
        })
      }
      head += hours
    }
  })
  for (const [thing, { work, head, tail }] of loads) bound = Math.max(bound, head + work / capacity[thing]! + tail)
  return bound
}

function requireJobs(jobs: readonly ParallelJob[], capacity: ParallelAsked['capacity']): void {
  requireRange('jobs', jobs.length, { min: 1, max: 30 })
  jobs.forEach(({ stretches }, j) => {
    requireRange(`jobs.${j}.stretches`, stretches.length, { max: 30 })
    stretches.forEach(({ hours, needs }, s) => {
      requireRange(`jobs.${j}.stretches.${s}.hours`, hours, { min: 0, max: 10_000 })
      for (const [thing, units] of Object.entries(needs)) {
        requireRange(`jobs.${j}.stretches.${s}.needs.${thing}`, units, { min: 0, max: capacity[thing] ?? 0 })
      }
    })
  })
}
