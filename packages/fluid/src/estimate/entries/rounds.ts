import { copyBelief } from '../../filter/index.ts'
import { noVisits } from '../doubts/visits.ts'
import type { ReadingEvent, ShopEvent, ShopTime } from '../events.ts'
import { varianceOf } from '../observe.ts'
import { bringTo } from '../passing.ts'
import { bestBranch, emptyTally, type ShopEstimate, type SumpState } from '../shop-estimate.ts'
import { alone, offsetOf, type RoundOffset, type RoundSight } from './round.ts'
import { brixSight } from './sights.ts'
import { sumpOf, takeEvent } from './take-event.ts'

/** Readings of one instrument further apart than this are two rounds, in days. */
const roundGap = 0.17

/** Looks at the day's readings as they come, without keeping anything, to find what the instrument had in all of them. */
export function roundsOf(shop: ShopEstimate, events: readonly ShopEvent[]): Map<string, RoundOffset> {
  const found = new Map<string, RoundOffset>()
  const readings = events.filter((event): event is ReadingEvent => event.kind === 'reading' && event.brix !== null)
  if (readings.length < 2) return found
  const rounds = new Map<string, { last: ShopTime; sights: RoundSight[] }[]>()
  const trial: ShopEstimate = { ...shop, sumps: new Map(), tally: emptyTally(), visits: noVisits() }
  const lastOf = new Map(readings.map((reading) => [reading.sump, reading]))
  const touched = new Set<string>()
  for (const event of events) {
    const last = lastOf.get(event.sump)
    // What is done to a sump after its last reading of the day says nothing of the round.
    if (event.kind !== 'setup' && event.kind !== 'transfer' && (last === undefined || event.at > last.at)) continue
    if (event.kind === 'verdict') continue
    const isFirst = event.kind === 'reading' && !touched.has(event.sump)
    touched.add(event.sump)
    if (event.kind === 'transfer' && event.to !== null) {
      touched.add(event.to)
      trialSump(shop, trial, { ...event, sump: event.to })
    }
    // A reading before anything else of the day sees the sump itself; what happens later in the day is tried on a copy.
    const sump = (isFirst ? shop.sumps.get(event.sump) : undefined) ?? trialSump(shop, trial, event)
    if (sump === null) continue
    if (event.kind !== 'reading') {
      takeEvent(trial, sump, event, alone(shop.priors))
      continue
    }
    bringTo(shop, sump, event.at)
    const branch = bestBranch(sump)
    const sight = brixSight(branch, event, { mean: 0, variance: 0, others: [], off: 0 }, shop.priors)
    if (sight === null) continue
    const sd = Math.sqrt(varianceOf(branch.belief, sight))
    const key = event.instrument ?? ''
    const ofInstrument = rounds.get(key) ?? []
    rounds.set(key, ofInstrument)
    const round = ofInstrument.at(-1)
    const seen = { entry: event.id, sump: event.sump, at: event.at, read: sight.read, expected: sight.expected, sd }
    if (round === undefined || event.at - round.last > roundGap) ofInstrument.push({ last: event.at, sights: [seen] })
    else {
      round.sights.push(seen)
      round.last = event.at
    }
  }
  for (const { sights } of [...rounds.values()].flat()) {
    const offset = judgeRound(shop, sights)
    for (const { entry } of sights) found.set(entry, offset)
  }
  return found
}

/** What the instrument had in one round. */
function judgeRound(shop: ShopEstimate, sights: readonly RoundSight[]): RoundOffset {
  // A sump that is read again says nothing new of the instrument: what surprised in it once would surprise twice.
  const firsts = sights.filter(({ sump }, i) => sights.findIndex((one) => one.sump === sump) === i)
  const takenOff = firsts.reduce((sum, { sump }) => sum + (shop.sumps.get(sump)?.takenOff ?? 0), 0) / firsts.length
  const offset = { ...offsetOf(firsts, shop.priors, takenOff), others: sights }
  if (offset.off >= 0.5) doubtInstrument(shop, offset)
  return offset
}

/** A copy of a sump with its likeliest branch alone. */
function trialSump(shop: ShopEstimate, trial: ShopEstimate, event: ShopEvent): SumpState | null {
  const known = trial.sumps.get(event.sump)
  if (known !== undefined) return known
  const real = shop.sumps.get(event.sump)
  if (real === undefined) return sumpOf(trial, event)
  const { belief, fluids } = bestBranch(real)
  const copy: SumpState = {
    ...real,
    branches: [{ belief: copyBelief(belief), weight: 0, fluids, stories: [] }],
    surprises: [],
    doubts: [],
    idles: [...real.idles],
  }
  trial.sumps.set(event.sump, copy)
  return copy
}

/** One doubt about the instrument, kept with the first sump of its round. */
function doubtInstrument(shop: ShopEstimate, { others, off, mean }: RoundOffset): void {
  const first = others[0]!
  shop.sumps.get(first.sump)?.doubts.push({
    kind: 'instrument',
    entry: null,
    entries: others.map(({ entry }) => entry),
    at: others.at(-1)!.at,
    probability: off,
    volume: null,
    found: {
      quantity: 'brix',
      read: first.read,
      expected: first.read - mean,
      low90: first.expected - 1.645 * first.sd,
      high90: first.expected + 1.645 * first.sd,
    },
    open: false,
    others: [{ kind: 'stands', probability: 1 - off }],
  })
}
