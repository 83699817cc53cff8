import type { BenchEntry } from '../book.ts'
import { fill } from './fill.ts'
import { look } from './look.ts'
import { dayOf, type Moment, msOf, type Place, type Scene } from './scene.ts'
import { leastSlip } from './slips.ts'

/** Minutes from one machine to the next. */
const pace = 3
/** From here an offset of the instrument is a fault, °Brix. */
export const grossOffset = 0.4

/** One walk past all sumps that are due in this hour, with one refractometer. */
export function walk(scene: Scene, hour: number): void {
  const { chance, stores, notebook } = scene
  const due = scene.places.filter((place) => isDue(place, scene, hour) && !place.chance.happens(0.03))
  if (due.length === 0) return
  const by = chance.happens(0.8) ? stores.refractometers[0]! : stores.refractometers[1]!
  const gross = chance.happens(1 / 60)
  const offset = gross ? chance.pick([-1, 1]) * (grossOffset + chance.exponential(0.2)) : chance.normal(0.03)
  const read = due.map((place, i) => {
    const moment: Moment = { hour, minute: Math.min(58, 2 + pace * i) }
    const entry = look(place, scene, moment, by, offset)
    fill(place, scene, moment)
    return entry
  })
  if (gross && read.length > 1) {
    const entries = read.map(({ id }) => id)
    notebook.labels.instrumentsOff.push({ instrument: by.id, atMs: msOf(scene, { hour, minute: 0 }), offset, entries })
  }
  if (read.length > 1 && chance.happens(1 / 50)) exchange(scene, read)
}

/** Figures of two machines that follow each other get into each other's lines; both are labelled unless they hardly differ. */
function exchange({ chance, notebook }: Scene, read: BenchEntry[]): void {
  const first = Math.floor(chance.unit() * (read.length - 1))
  const [one, other] = [read[first]!, read[first + 1]!]
  const { wrongReadings } = notebook.labels
  const difference = other.brix! - one.brix!
  const slipped = wrongReadings.some(({ entry }) => entry === one.id || entry === other.id)
  if (slipped || Math.abs(difference) < leastSlip) return
  ;[one.brix, other.brix] = [other.brix!, one.brix!]
  for (const [entry, error] of [
    [one, difference],
    [other, -difference],
  ] as const) {
    wrongReadings.push({ kind: 'wrong-sump', sump: entry.sump!, entry: entry.id, atMs: Date.parse(entry.at), error })
  }
}

function isDue({ machine }: Place, { calendar }: Scene, hour: number): boolean {
  const day = dayOf({ hour, minute: 0 })
  const { lookDays, lookHour } = machine.habits
  if (hour % 24 !== lookHour || !lookDays.includes(day % 7) || calendar.days[day] !== 'work') return false
  return !machine.down.some(({ from, to }) => day >= from && day <= to)
}
