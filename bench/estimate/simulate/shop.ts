import type { BenchBook } from '../book.ts'
import type { ShopSize, SimulatedShop } from '../world.ts'
import { changeOver, charge, skim, transfer } from './change.ts'
import { bookDays, dateOf, drawClock, instantOf, stepsPerDay } from './clock.ts'
import { drawEquipment, stripPads, sumpInBook } from './equipment.ts'
import { openJournal } from './journal.ts'
import { chanceOf } from './random.ts'
import { drawLosses, drawWeather } from './rates.ts'
import { walkRound } from './round.ts'
import type { SimShop } from './shop-state.ts'
import { emptyCourse, fillAtStart, letPass, type SimSump, seenVolume, writeCourse } from './sump.ts'
import { pour } from './tank.ts'
import { actUnseen, forget, topUp, waterOn } from './top-up.ts'
import { drawTraits } from './traits.ts'
import { truthOf } from './truth.ts'

/** Simulates one shop of so many sumps; the same seed and number give the same shop. */
export function simulateShop({ seed, shop: number, sumps }: ShopSize): SimulatedShop {
  const shop = openShop(seed, number, sumps)
  startSumps(shop)
  for (let step = 0; step < shop.sumps[0]!.course.volume.length; step++) {
    for (const sump of shop.sumps) writeCourse(sump, step)
    if (step < bookDays * stepsPerDay) act(shop, step)
    for (const sump of shop.sumps) letPass(sump, step)
  }
  return {
    book: bookOf(shop, number),
    truth: truthOf(shop.clock, shop.sumps),
    labels: shop.journal.labels,
    instant: (day, hour) => instantOf(shop.clock, day * stepsPerDay + hour * 2),
  }
}

function openShop(seed: number, number: number, count: number): SimShop {
  const chance = chanceOf(seed, number, 1)
  const clock = drawClock(chance)
  const equipment = drawEquipment(chance)
  const weather = drawWeather(chance)
  const hasCentral = chance.happens(0.4)
  const sumps = Array.from({ length: count }, (_, place): SimSump => {
    const own = chanceOf(seed, number, 2, place)
    const central = hasCentral && place === 0
    const traits = drawTraits(own, central)
    const product = own.happens(0.75) ? 0 : 1
    const id = `s${place + 1}`
    const fresh = {
      id,
      place,
      inBook: sumpInBook(own, id, traits, central, equipment.fluids[product]!.id),
      traits,
      losses: drawLosses(own, clock, weather, traits.markVolume),
      chance: own,
      product,
      sludge: traits.markVolume * own.between(0, 0.05),
      meterCount: own.between(0, 5000),
      nextStripDay: Math.floor(own.between(0, 14)),
      nextTitrationDay: Math.floor(own.between(0, 26)),
      nextSkimDay: traits.skimEveryDays ?? Number.POSITIVE_INFINITY,
      lastShown: null,
    }
    return { ...fresh, tank: fillAtStart(fresh, equipment), course: emptyCourse() }
  })
  return {
    clock,
    equipment,
    seasonPhase: chance.between(0, 2 * Math.PI),
    sumps,
    journal: openJournal(clock, chanceOf(seed, number, 3)),
    chance,
  }
}

/** Books begin with a fresh charge for some sumps, for the others with whatever is read first. */
function startSumps(shop: SimShop): void {
  for (const sump of shop.sumps) {
    if (sump.traits.startsWithCharge) charge(sump, shop, 0, 1)
    if (sump.traits.filling !== 'meter') continue
    // A meter's first count says where it stood, not what was poured.
    const meter = { id: `m${sump.id}`, count: Number(sump.meterCount.toFixed(0)) }
    shop.journal.write(0, 2, { kind: 'addition', sump: sump.id, meter, strength: 0 })
  }
}

function act(shop: SimShop, step: number): void {
  const day = Math.floor(step / stepsPerDay)
  const ofDay = step % stepsPerDay
  walkRound(shop, step)
  if (ofDay === 24 && day % 60 === 45) writeAnalysis(shop, step)
  for (const sump of shop.sumps) {
    const { traits, chance, losses } = sump
    leak(sump, shop, step)
    if (ofDay === 23) writeUse(sump, shop, step, day)
    if (ofDay === 26 && losses.running[step] === 1) {
      actUnseen(sump, shop, step)
      // Between rounds somebody fills up what has fallen far.
      if (seenVolume(sump, step) < traits.plateVolume * 0.82 && chance.happens(0.4)) topUp(sump, shop, step, 17)
    }
    if (ofDay === 30 && day >= sump.nextSkimDay) {
      sump.nextSkimDay = day + traits.skimEveryDays!
      skim(sump, shop, step)
    }
    if (ofDay === 28 && day === traits.changesOn) changeOver(sump, shop, step)
    if (ofDay === 32 && chance.happens(0.06 / 182)) {
      const to = shop.sumps[(sump.place + 1) % shop.sumps.length]!
      if (to !== sump && to.product === sump.product) transfer(sump, to, shop, step)
    }
  }
}

function leak(sump: SimSump, shop: SimShop, step: number): void {
  const day = Math.floor(step / stepsPerDay)
  const { leak: hole, markVolume } = sump.traits
  if (hole === null || day < hole.from || day >= hole.to) return
  const before = sump.tank.water
  const volume = hole.litresADay / stepsPerDay
  if (before < markVolume * 1.2) pour(sump.tank, { volume, strength: 0, product: 0, ...waterOn(shop, 0, day) })
  if (day === hole.from && step % stepsPerDay === 0) {
    forget(sump, shop, step, 0, 'leak-in', hole.litresADay * (hole.to - hole.from), before)
  }
}

/** Jobs and standstills, of which half are written down. */
function writeUse({ id, losses, chance }: SimSump, shop: SimShop, step: number, day: number): void {
  if (losses.jobs.includes(day) && chance.happens(0.4)) {
    const material = chance.pick(['aluminium', 'steel', 'cast iron', 'stainless steel'])
    shop.journal.write(step, 3, { kind: 'job', sump: id, material })
  }
  for (const { from, to } of losses.standstills) {
    if (day !== to || !chance.happens(0.6)) continue
    const midnight = (of: number) => new Date(instantOf(shop.clock, of * stepsPerDay)).toISOString()
    shop.journal.write(step, 4, { kind: 'idle', sump: id, from: midnight(from), to: midnight(to + 1) })
  }
}

function writeAnalysis(shop: SimShop, step: number): void {
  const hardness = Math.round(waterOn(shop, 0, Math.floor(step / stepsPerDay)).hardness * shop.chance.factor(0.05))
  shop.journal.write(step, 1, { kind: 'analysis', about: { kind: 'water', id: 'tap' }, hardness })
}

function bookOf({ clock, equipment, sumps, journal }: SimShop, number: number): BenchBook {
  return {
    format: 'sumpbook-book/1',
    shop: {
      name: `Simulated shop ${number}`,
      timeZone: clock.timeZone,
      units: 'metric',
      currency: 'EUR',
      workDays: clock.workDays,
      shutdowns: clock.shutdowns.map(({ from, to }) => ({ from: dateOf(clock, from), to: dateOf(clock, to) })),
    },
    fluids: equipment.fluids,
    waters: equipment.waters,
    sumps: sumps.map(({ inBook }) => inBook),
    instruments: [
      ...equipment.refractometers.map(({ id, resolution }) => ({ id, name: id, kind: 'refractometer', resolution })),
      { id: 'strips', name: 'Strips', kind: 'strip', pads: stripPads },
    ],
    meters: sumps
      .filter(({ traits }) => traits.filling === 'meter')
      .map(({ id }) => ({ id: `m${id}`, name: `Meter at ${id}`, litresPerCount: 1, sump: id })),
    entries: journal.entries.toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)),
  }
}
