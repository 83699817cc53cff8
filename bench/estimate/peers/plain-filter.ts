import type { BenchBook, BenchEntry } from '../book.ts'
import { everySump } from './last-reading.ts'
import { learn, type Observation, surpriseVariance } from './matrix-filter.ts'
import type { PromptPeer } from './peer.ts'
import { moveTo, type PlainFilterOptions, type Run, strengthOf } from './run.ts'
import { B, lnD, lnE, M, N, pourInto, row, takeOut, V, wideBelief } from './sump-belief.ts'
import { estimateFrom } from './sump-figures.ts'
import { fluidAt, middleOf, type SumpHistory, seenLitres, waterHardness } from './sump-history.ts'
import { workDaysOf } from './work-days.ts'

/**
 * An extended Kalman filter as anybody would first write it: six states, one observation at a time, the plate's volume
 * taken at its word, fixed noise, at most a gate against gross errors.
 */
export function plainFilter(options: PlainFilterOptions): PromptPeer {
  return {
    name: options.name,
    estimate: (book, question) =>
      everySump(book, question, (history) => {
        const run = follow(history, book, options, question.atMs)
        return estimateFrom(run, question)
      }),
  }
}

function follow(history: SumpHistory, book: BenchBook, options: PlainFilterOptions, atMs: number): Run {
  const { entries, mark } = history
  const first = entries[0]
  const startMs = first === undefined ? atMs : Date.parse(first.at)
  const days = workDaysOf(
    book,
    entries.filter(({ kind }) => kind === 'idle'),
    atMs,
  )
  const belief = wideBelief(mark, fluidAt(history, startMs).limits.concentration.target)
  const run: Run = { history, options, days, belief, ms: startMs, doubts: [], leftOut: false, meters: new Map() }
  for (const entry of entries) {
    moveTo(run, Date.parse(entry.at))
    take(run, entry)
  }
  moveTo(run, atMs)
  return run
}

function take(run: Run, entry: BenchEntry): void {
  if (entry.kind === 'charge') startAnew(run, entry)
  else if (entry.kind === 'addition') add(run, entry)
  else if (entry.kind === 'drawoff') takeOut(run.belief, entry.volume!, 0.1 * entry.volume!)
  else if (entry.kind === 'transfer') move(run, entry)
  else if (entry.kind === 'skim') run.belief.cov[B]![B]! += 0.15 ** 2
  else if (entry.kind === 'reading') read(run, entry)
}

function startAnew({ belief, history, ms }: Run, entry: BenchEntry): void {
  const { mark, book } = history
  const [volume, concentrate, minerals] = belief.mean as [number, number, number]
  const heel = Math.min(entry.heldBack ?? 0.08 * mark, volume)
  const fresh = wideBelief(mark, 0)
  const poured = entry.volume ?? Math.max(mark - heel, 1)
  belief.mean[V] = heel
  belief.mean[M] = (concentrate * heel) / volume
  belief.mean[N] = (minerals * heel) / volume
  belief.mean[B] = fresh.mean[B]!
  for (const i of [V, M, N, B]) {
    for (let j = 0; j < 6; j++) {
      belief.cov[i]![j] = 0
      belief.cov[j]![i] = 0
    }
  }
  const sd = 0.04 * mark
  belief.cov[V]![V] = sd ** 2
  belief.cov[M]![M] = (sd * 0.05) ** 2
  belief.cov[N]![N] = (sd * 300) ** 2
  belief.cov[B]![B] = fresh.cov[B]![B]!
  const strength = entry.strength ?? 6
  const hardness = waterHardness(book, entry.water, ms)
  pourInto(belief, { volume: poured, volumeSd: 0.05 * poured, strength, strengthSd: 0.08 * strength, hardness })
}

function add(run: Run, entry: BenchEntry): void {
  const { belief, history, ms } = run
  const { mark, book } = history
  const strength = entry.concentrate === undefined ? (entry.strength ?? 0) : 100
  const hardness = waterHardness(book, entry.water, ms)
  const strengthSd = strength === 100 ? 0 : 0.08 * strength
  const poured = entry.concentrate ?? entry.volume ?? metered(run, entry)
  if (poured !== null) {
    pourInto(belief, { volume: poured, volumeSd: 0.06 * poured, strength, strengthSd, hardness })
  } else if (entry.toMark === true) {
    const volume = Math.max(mark - belief.mean[V]!, 0.02 * mark)
    pourInto(belief, { volume, volumeSd: 0.3 * mark, strength, strengthSd, hardness })
    observe(run, { surprise: mark - belief.mean[V]!, slope: row([V, 1]), variance: (0.06 * mark) ** 2 })
  }
}

function metered({ meters }: Run, { meter }: BenchEntry): number | null {
  if (meter === undefined) return null
  const before = meters.get(meter.id)
  meters.set(meter.id, meter.count)
  return before === undefined ? 0 : Math.max(meter.count - before, 0)
}

function move({ belief, history }: Run, entry: BenchEntry): void {
  const volume = entry.volume!
  if (entry.sump === history.sump.id) {
    takeOut(belief, volume, 0.1 * volume)
    return
  }
  // What the other sump held is not known here: about the target, about as hard as this one.
  const strength = fluidAt(history, Date.parse(entry.at)).limits.concentration.target
  const hardness = belief.mean[N]! / belief.mean[V]!
  pourInto(belief, { volume, volumeSd: 0.1 * volume, strength, strengthSd: 1.5, hardness })
}

function read(run: Run, entry: BenchEntry): void {
  const { belief, history } = run
  const litres = seenLitres(history, entry)
  if (litres !== null) {
    const variance = (0.06 * history.mark) ** 2
    observe(run, { surprise: litres - belief.mean[V]!, slope: row([V, 1]), variance })
  }
  if (entry.brix !== undefined) readBrix(run, entry, entry.brix)
  if (entry.titration !== undefined) {
    const { percent, slope } = strengthOf(belief)
    observe(run, { surprise: entry.titration - percent, slope, variance: 0.4 ** 2 })
  }
  if (entry.hardness !== undefined) {
    const { mean, sd } = middleOf(entry.hardness)
    const [volume, minerals] = [belief.mean[V]!, belief.mean[N]!]
    const expected = minerals / volume
    const slope = row([V, -expected / volume], [N, 1 / volume])
    if (typeof entry.hardness === 'object' && 'atLeast' in entry.hardness && expected > mean) return
    observe(run, { surprise: mean - expected, slope, variance: sd ** 2 + (0.13 * mean) ** 2 })
  }
}

function readBrix(run: Run, entry: BenchEntry, brix: number): void {
  const { belief, history, options, doubts } = run
  const factor = fluidAt(history, Date.parse(entry.at)).brixFactor
  const { percent, slope } = strengthOf(belief)
  const surprise = brix - percent / factor - belief.mean[B]!
  const seen: Observation = {
    surprise,
    slope: slope.map((s, i) => s / factor + (i === B ? 1 : 0)),
    variance: 0.17 ** 2,
  }
  const beyond = options.gate !== null && Math.abs(surprise) > options.gate * Math.sqrt(surpriseVariance(belief, seen))
  if (beyond && !run.leftOut) {
    run.leftOut = true
    const { id, sump, at } = entry
    doubts.push({ kind: 'misread', sump: sump!, entry: id, entries: [id], atMs: Date.parse(at) })
    return
  }
  // A second surprise in a row is believed: something really changed.
  if (beyond) belief.cov[M]![M]! += ((surprise * factor * belief.mean[V]!) / 100) ** 2
  run.leftOut = false
  observe(run, seen)
}

/** Learns, and keeps the state where a sump can be, which the straight lines of the filter do not know. */
function observe({ belief, history: { mark } }: Run, observation: Observation): void {
  learn(belief, observation)
  const keep = (state: number, low: number, high: number) => {
    belief.mean[state] = Math.min(Math.max(belief.mean[state]!, low), high)
  }
  keep(V, 0.05 * mark, 4 * mark)
  keep(M, 0.001 * belief.mean[V]!, 0.5 * belief.mean[V]!)
  keep(N, belief.mean[V]!, 5000 * belief.mean[V]!)
  keep(lnE, Math.log(1e-4 * mark), Math.log(0.15 * mark))
  keep(lnD, Math.log(1e-4 * mark), Math.log(0.15 * mark))
}
