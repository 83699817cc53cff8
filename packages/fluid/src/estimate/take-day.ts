import { blur, copyBelief, learn } from '../filter/index.ts'
import type { AdditionEvent, ChargeEvent, PouredWater, ReadingEvent, ShopEvent, ShopTime, SumpSpec } from './events.ts'
import { pass, takeBack } from './flow.ts'
import { pourOf } from './habits.ts'
import { varianceOf } from './observe.ts'
import { chargeAnew, type Pour, pourShare, pourUpTo, takeOut } from './pour.ts'
import { oil, start, written } from './priors.ts'
import { brixSight, settle, takeReading } from './read-sump.ts'
import { alone, offsetOf, type RoundOffset, type RoundSight } from './round.ts'
import {
  type Branch,
  bestBranch,
  emptyTally,
  guessedMark,
  newSump,
  type ShopEstimate,
  type SumpState,
} from './shop-estimate.ts'
import { bias, carryOff, chloride, evaporation, fill, full, gauge, hardness, scale, size, strength } from './state.ts'
import { takeVerdict } from './verdict.ts'
import { noVisits } from './visits.ts'
import { workBetween } from './work-calendar.ts'

/** Readings of one instrument further apart than this are two rounds, in days. */
const roundGap = 0.17

/**
 * Takes one calendar day of a shop's records into its estimate, which is changed. Days come in rising order, days without
 * records may be left out. Readings of one round are looked at together first, since they share the instrument's error.
 *
 * @param events of that day, in the order of the journal: (at, rank, id)
 */
export function takeDay(shop: ShopEstimate, day: number, events: readonly ShopEvent[]): void {
  shop.firstDay ??= day
  const offsets = roundsOf(shop, events)
  for (const event of events) {
    const sump = sumpOf(shop, event)
    if (sump === null) continue
    const offset = event.kind === 'reading' ? (offsets.get(event.id) ?? alone(shop.priors)) : alone(shop.priors)
    takeEvent(shop, sump, event, offset)
  }
}

/** The sump of an event; one that nobody described is not there. */
function sumpOf(shop: ShopEstimate, event: ShopEvent): SumpState | null {
  const known = shop.sumps.get(event.sump)
  if (known !== undefined) return known
  if (event.kind !== 'setup') return null
  const sump = newSump(event.spec, event.at, shop.priors)
  shop.sumps.set(event.sump, sump)
  return sump
}

function takeEvent(shop: ShopEstimate, sump: SumpState, event: ShopEvent, offset: RoundOffset): void {
  switch (event.kind) {
    case 'setup':
      return describe(sump, event.spec)
    case 'verdict':
      return takeVerdict(sump, event)
    case 'idle':
      return standStill(shop, sump, event)
    case 'hours':
      return runHours(shop, sump, event)
  }
  bringTo(shop, sump, event.at)
  switch (event.kind) {
    case 'reading':
      takeReading(shop, sump, event, offset)
      break
    case 'charge':
      for (const branch of sump.branches) charge(branch, sump, event)
      remember(sump, event)
      break
    case 'addition':
      for (const branch of sump.branches) add(branch, sump, event)
      remember(sump, event)
      break
    case 'drawoff':
      for (const branch of sump.branches) draw(branch, sump, event.volume)
      break
    case 'transfer':
      transfer(shop, sump, event)
      break
    case 'skim':
      for (const { belief } of sump.branches) {
        belief.mean[bias]! -= oil.skimmed * Math.max(0, belief.mean[bias]!)
        blur(belief, bias, 0.08 ** 2)
      }
      break
    case 'job':
      for (const { belief } of sump.branches) {
        blur(belief, carryOff, 0.35 ** 2)
        blur(belief, evaporation, 0.1 ** 2)
      }
      break
    case 'cleanout':
      // The sludge is out: the mark holds what it holds.
      for (const { belief } of sump.branches) blur(belief, scale, 0.05 ** 2)
      break
  }
  sump.dataAt = event.at
  settle(sump)
}

/** Lets the time up to an instant pass in every branch. A clock that goes back changes nothing. */
export function bringTo(shop: ShopEstimate, sump: SumpState, at: ShopTime): void {
  if (!(at > sump.at)) return
  const time = exposureOf(shop, sump, sump.at, at)
  for (const { belief } of sump.branches) pass(belief, time, shop.priors.unrest)
  sump.at = at
}

/** A time at a sump in working days' worth of its losses. */
export function exposureOf({ calendar, priors }: ShopEstimate, { idles }: SumpState, from: ShopTime, until: ShopTime) {
  const days = until - from
  const work = Math.min(days, workBetween(calendar, from, until, idles))
  return {
    days,
    evaporation: work + priors.idle.evaporation * (days - work),
    carryOff: work + priors.idle.carryOff * (days - work),
  }
}

/** Looks at the day's readings as they come, without keeping anything, to find what the instrument had in all of them. */
function roundsOf(shop: ShopEstimate, events: readonly ShopEvent[]): Map<string, RoundOffset> {
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
  const takenOff = sights.reduce((sum, { sump }) => sum + (shop.sumps.get(sump)?.takenOff ?? 0), 0) / sights.length
  const offset = offsetOf(sights, shop.priors, takenOff)
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

function describe(sump: SumpState, spec: SumpSpec): void {
  const before = sump.plate
  const wasKnown = sump.spec.mark !== null
  sump.spec = spec
  const plate = spec.mark === null && !wasKnown ? before : guessedMark(spec)
  if (plate === before) return
  sump.plate = plate
  // The mark was measured or moved: what was learnt of it against the old figure is carried over, and doubted again.
  for (const { belief } of sump.branches) {
    belief.mean[scale]! += Math.log(before / plate)
    blur(belief, scale, (start.scaleSd / 2) ** 2)
  }
}

/** A standstill told afterwards takes back what was reckoned as work; one to come waits for its time. */
function standStill(shop: ShopEstimate, sump: SumpState, { from, until }: ShopEvent & { kind: 'idle' }): void {
  if (!(until > from)) return
  const told = { from: Math.max(from, sump.at), until }
  const past = workBetween(shop.calendar, from, Math.min(until, sump.at), sump.idles)
  if (past > 0) for (const { belief } of sump.branches) takeBack(belief, past, shop.priors.idle)
  if (told.until > told.from) sump.idles.push(told)
  sump.idles = sump.idles.filter((idle) => idle.until > sump.at - 60).slice(-8)
  if (until > from && from < sump.at) sump.idles.push({ from, until: Math.min(until, sump.at) })
}

/** Hours on the machine's counter tell a busy time from a slack one. */
function runHours(shop: ShopEstimate, sump: SumpState, { at, hours }: ShopEvent & { kind: 'hours' }): void {
  const last = sump.hours
  if (last !== null && (at <= last.at || hours < last.hours)) {
    if (hours < last.hours) sump.hours = { at, hours, perDay: last.perDay }
    return
  }
  const work = last === null ? 0 : workBetween(shop.calendar, last.at, at, sump.idles)
  if (last === null || work < 0.5) {
    if (last === null) sump.hours = { at, hours, perDay: null }
    return
  }
  const perDay = (hours - last.hours) / work
  if (last.perDay !== null && last.perDay > 0) {
    const share = Math.min(2, perDay / last.perDay)
    bringTo(shop, sump, at)
    for (const { belief } of sump.branches) {
      if (share < 1) takeBack(belief, (1 - share) * work, shop.priors.idle)
      else pass(belief, { days: 1e-6, evaporation: (share - 1) * work, carryOff: (share - 1) * work })
    }
  }
  sump.hours = { at, hours, perDay: last.perDay === null ? perDay : 0.8 * last.perDay + 0.2 * perDay }
}

/** What an addition or a charge is poured as; a strength that nobody wrote is what is usually poured. */
function poured(sump: SumpState, strengthWritten: number | null, water: PouredWater): Pour {
  if (strengthWritten !== null) return pourOf({ strength: strengthWritten, water })
  const guess = pourOf({ strength: sump.usualStrength ?? 0.7 * (sump.spec.target ?? 7), water })
  return { ...guess, strengthSd: 2.5 }
}

function charge(branch: Branch, sump: SumpState, event: ChargeEvent): void {
  const { belief } = branch
  const { plate } = sump
  const litresToShare = 1 / (plate * Math.exp(belief.mean[scale]!))
  const used = sump.dataAt !== null
  const heel = event.heldBack === null ? (used ? 0.06 : 0.01) : event.heldBack * litresToShare
  const heelSd = event.heldBack === null ? (used ? 0.045 : 0.01) : 0.25 * heel + 0.005
  const strengthHere = event.strength ?? sump.spec.target
  const pour = poured(sump, strengthHere, event.water)
  const old = belief.mean[strength]!
  // A charge of just what the plate says repeats the plate and measures nothing.
  const isPlate = event.volume !== null && Math.abs(event.volume + (event.heldBack ?? 0) - plate) < 0.015 * plate
  const measured = event.volume === null || event.volume <= 0 || isPlate ? null : event.volume
  const share = measured === null ? null : measured * litresToShare
  chargeAnew(belief, { heel: Math.min(heel, 0.6), heelSd, share, shareSd: written.volume * (share ?? 0) }, pour)
  if (share !== null) fullNow(branch, 0.07)
  const heelConcentrate = Math.min(heel, 0.6) * old
  const fresh = Math.max(0, belief.mean[fill]! - heel) * pour.strength
  branch.fluids = mixFluids(branch.fluids, heelConcentrate, event.fluid, fresh)
}

/** After a charge or a measured top-up a sump stands at about its mark. */
function fullNow({ belief }: Branch, sd: number): void {
  const { mean } = belief
  byFull.fill(0)
  byFull[fill] = 1
  byFull[full] = -1
  byFull[gauge] = 1
  learn(belief, byFull, mean[full]! - mean[gauge]! - mean[fill]!, sd ** 2)
}

const byFull = new Float64Array(size)

function add(branch: Branch, sump: SumpState, event: AdditionEvent): void {
  const { belief } = branch
  const pour = poured(sump, event.strength, event.water)
  const before = belief.mean[fill]!
  const concentrateBefore = before * belief.mean[strength]!
  if (event.amount === 'to-mark') pourUpTo(belief, written.mark, pour)
  else if (event.amount === null) pourUpTo(belief, 0.08, pour)
  else if (event.amount > 0) {
    const share = Math.min(3, event.amount / (sump.plate * Math.exp(belief.mean[scale]!)))
    pourShare(belief, share, written.volume * share + 0.002, pour)
    if (event.strength !== 100 && share > 0.02) fullNow(branch, 0.15)
  }
  const poured_ = Math.max(0, belief.mean[fill]! - before) * pour.strength
  branch.fluids = mixFluids(branch.fluids, concentrateBefore, event.fluid, poured_)
}

/** Shares of the concentrate by product after some more of one; what falls under a thousandth is forgotten. */
function mixFluids(before: Branch['fluids'], held: number, fluid: string, poured: number): Branch['fluids'] {
  if (before.length === 1 && before[0]!.fluid === fluid) return before
  const whole = held + poured
  if (!(whole > 0)) return before
  const all = before.map((one) => ({ fluid: one.fluid, share: (one.share * held) / whole }))
  const same = all.find((one) => one.fluid === fluid)
  if (same === undefined) all.push({ fluid, share: poured / whole })
  else same.share += poured / whole
  const kept = all.filter(({ share }) => share > 0.001)
  const sum = kept.reduce((total, { share }) => total + share, 0)
  return kept.map((one) => ({ fluid: one.fluid, share: one.share / sum }))
}

function draw(branch: Branch, sump: SumpState, litres: number | null): void {
  const { belief } = branch
  const share = litres === null ? 0.1 : litres / (sump.plate * Math.exp(belief.mean[scale]!))
  takeOut(belief, share, litres === null ? 0.1 : 0.08 * share + 0.002)
}

function transfer(shop: ShopEstimate, from: SumpState, event: ShopEvent & { kind: 'transfer' }): void {
  const source = bestBranch(from)
  const { mean, cov } = source.belief
  const litres = event.volume ?? 0.1 * from.plate
  const pour: Pour = {
    strength: mean[strength]!,
    strengthSd: Math.sqrt(Math.max(0, cov[strength * size + strength]!)),
    mixed: false,
    hardness: mean[hardness]!,
    hardnessSd: Math.sqrt(Math.max(0, cov[hardness * size + hardness]!)),
    chloride: mean[chloride]!,
    chlorideSd: Math.sqrt(Math.max(0, cov[chloride * size + chloride]!)),
  }
  const brought = source.fluids[0]!.fluid
  for (const branch of from.branches) draw(branch, from, litres)
  const to = event.to === null || event.to === event.sump ? undefined : shop.sumps.get(event.to)
  if (to === undefined) return
  bringTo(shop, to, event.at)
  for (const branch of to.branches) {
    const share = litres / (to.plate * Math.exp(branch.belief.mean[scale]!))
    const held = branch.belief.mean[fill]! * branch.belief.mean[strength]!
    pourShare(branch.belief, Math.min(share, 3), (event.volume === null ? 0.5 : 0.08) * share, pour)
    branch.fluids = mixFluids(branch.fluids, held, brought, share * pour.strength)
  }
  to.dataAt = event.at
}

/** What is usually poured, to guess what nobody wrote. */
function remember(sump: SumpState, { strength: written_, water, kind }: AdditionEvent | ChargeEvent): void {
  sump.pouredSince = true
  if (written_ !== null && written_ < 60 && kind === 'addition') {
    sump.usualStrength = sump.usualStrength === null ? written_ : 0.7 * sump.usualStrength + 0.3 * written_
  }
  if (water.hardness !== null) sump.usualWater = { hardness: water.hardness, chloride: water.chloride ?? 40 }
}
