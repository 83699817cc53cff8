import type { BenchBook } from '../book.ts'
import { chanceOf } from '../simulate/random.ts'
import type { ShopSize, SimulatedShop } from '../world.ts'
import { bookDays, type Calendar, drawCalendar, hourStart, truthHours, writtenDate } from './calendar.ts'
import { flow, mix } from './contents.ts'
import { happenAtNoon } from './happenings.ts'
import { dryShare, hindsight } from './hindsight.ts'
import { drawMachine, machineInBook } from './machine.ts'
import { openNotebook } from './notebook.ts'
import { msOf, type Place, remember, type Scene } from './scene.ts'
import { drawStores, type Stores, storesInBook, toStep, waterOn } from './stores.ts'
import { walk } from './walk.ts'
import { drawWarmth, wander } from './wander.ts'

/** Kept apart from the seeds of the other simulator. */
const streams = 7000

/** Simulates one well-kept shop; the same seed and number give the same shop. */
export function simulateOtherShop({ seed, shop: number, sumps }: ShopSize): SimulatedShop {
  const scene = openScene(seed, number, sumps)
  writeCounters(scene)
  for (let hour = 0; hour < truthHours; hour++) {
    for (const place of scene.places) remember(place)
    if (hour < bookDays * 24) passHour(scene, hour)
    for (const place of scene.places) letFlow(place, hour)
  }
  return {
    book: bookOf(scene, number),
    truth: hindsight(scene.calendar, scene.places),
    labels: scene.notebook.labels,
    instant: (day, hour) => hourStart(scene.calendar, day * 24 + hour),
  }
}

function openScene(seed: number, number: number, sumps: number): Scene {
  const chance = chanceOf(seed, streams, number)
  const calendar = drawCalendar(chance)
  const stores = drawStores(chance)
  const warmth = drawWarmth(chance)
  const central = chance.happens(0.3)
  const places = Array.from({ length: sumps }, (_, i) =>
    openPlace(chanceOf(seed, streams + 1, number, i), `s${i + 1}`, central && i === 0, calendar, stores, warmth),
  )
  return { calendar, stores, places, notebook: openNotebook(chanceOf(seed, streams + 2, number)), chance }
}

function openPlace(
  chance: Place['chance'],
  id: string,
  central: boolean,
  calendar: Calendar,
  stores: Stores,
  warmth: Float64Array,
): Place {
  const machine = drawMachine(chance, id, central, calendar.shift.from)
  const product = chance.happens(0.7) ? 0 : 1
  const { target, id: fluid } = stores.products[product]!
  const tap = waterOn(stores, 'tap', 0)
  const aged = chance.between(1, 2.5)
  const water = { hardness: tap.hardness * aged, salts: tap.salts * aged }
  const litres = machine.mark * chance.between(0.9, 1)
  const { skimEvery, drawsOffEvery, stripEvery } = machine.habits
  return {
    machine,
    inBook: machineInBook(chance, machine, fluid),
    chance,
    wandering: wander(chance, calendar, warmth, machine.nature, machine.down),
    contents: mix(litres, target + chance.normal(0.7), product, water, stores.products.length),
    product,
    sludge: machine.mark * chance.between(0, 0.03),
    oil: chance.between(0, 0.15),
    counter: chance.between(100, 9000),
    lastSeen: null,
    due: {
      strip: Math.floor(chance.between(0, stripEvery)),
      titration: Math.floor(chance.between(0, 28)),
      skim: skimEvery ?? 0,
      drawOff: drawsOffEvery ?? 0,
    },
    past: [],
  }
}

/** Where each meter stood when the book began: nothing was poured then. */
function writeCounters(scene: Scene): void {
  for (const { machine, counter } of scene.places) {
    if (machine.habits.fillsBy !== 'meter') continue
    const meter = { id: `water-${machine.id}`, count: toStep(counter, 0.5) }
    const start = msOf(scene, { hour: 0, minute: 0 })
    scene.notebook.write(start, { kind: 'addition', sump: machine.id, meter, strength: 0, water: 'tap' })
  }
}

function passHour(scene: Scene, hour: number): void {
  walk(scene, hour)
  if (hour % 24 !== 12) return
  for (const place of scene.places) happenAtNoon(place, scene, { hour, minute: 30 })
  const day = (hour - 12) / 24
  if (day % 45 !== 20) return
  const hardness = toStep(waterOn(scene.stores, 'tap', day).hardness * scene.chance.factor(0.03), 1)
  scene.notebook.write(msOf(scene, { hour, minute: 5 }), {
    kind: 'analysis',
    about: { kind: 'water', id: 'tap' },
    hardness,
  })
}

function letFlow(place: Place, hour: number): void {
  const { machine, wandering } = place
  place.contents = flow(place.contents, wandering.flows[hour]!, 1, machine.wear, dryShare * machine.mark)
  place.sludge += machine.sludge / 24
  place.oil += machine.oil / 24
}

function bookOf({ calendar, stores, places, notebook }: Scene, number: number): BenchBook {
  const { timeZone, workDays, shutdowns } = calendar
  return {
    format: 'sumpbook-book/1',
    shop: {
      name: `Other shop ${number}`,
      timeZone,
      units: 'metric',
      currency: 'EUR',
      workDays,
      shutdowns: shutdowns.map(({ from, to }) => ({
        from: writtenDate(calendar, from),
        to: writtenDate(calendar, to),
      })),
    },
    ...storesInBook(stores),
    sumps: places.map(({ inBook }) => inBook),
    meters: places
      .filter(({ machine }) => machine.habits.fillsBy === 'meter')
      .map(({ machine: { id } }) => ({ id: `water-${id}`, name: `Meter ${id}`, litresPerCount: 1, sump: id })),
    entries: notebook.entries.toSorted((one, other) => Date.parse(one.at) - Date.parse(other.at)),
  }
}
