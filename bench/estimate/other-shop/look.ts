import type { BenchEntry } from '../book.ts'
import { inShift } from './calendar.ts'
import { percentOf } from './contents.ts'
import { brixOf, dayOf, type Moment, msOf, type Place, runsAt, type Scene } from './scene.ts'
import { slipOf } from './slips.ts'
import { pads, type Refractometer, toStep } from './stores.ts'

/** Reads a sump with a refractometer that is off by so much on this walk, and writes what was read or thought to be read. */
export function look(place: Place, scene: Scene, moment: Moment, by: Refractometer, off: number): BenchEntry {
  const { chance, machine } = place
  const { products } = scene.stores
  const shown = Math.max(
    0,
    toStep(brixOf(place, scene.stores) + by.zero + off + chance.normal(by.eye + 0.04), by.resolution),
  )
  const slip = slipOf(shown, chance)
  place.lastSeen = shown * products[place.product]!.sheetFactor
  const atMs = msOf(scene, moment)
  const entry = scene.notebook.write(atMs, {
    kind: 'reading',
    sump: machine.id,
    brix: slip ?? shown,
    instrument: by.id,
    ...pumpsOf(place, moment, scene),
    ...levelOf(place, moment),
    ...analysesOf(place, scene, moment),
  })
  if (slip !== null) {
    const wrong = { kind: 'misread', sump: machine.id, entry: entry.id, atMs, error: slip - shown } as const
    scene.notebook.labels.wrongReadings.push(wrong)
  }
  return entry
}

function pumpsOf(place: Place, { hour }: Moment, { calendar }: Scene): Pick<BenchEntry, 'pumps'> {
  if (runsAt(place, hour)) return { pumps: 'running' }
  return inShift(calendar, hour) || place.chance.happens(0.5) ? { pumps: 'stopped' } : {}
}

/** The level as the plate's litres or by the dipstick: sludge lifts it, what is out in the lines is missing. */
function levelOf(place: Place, { hour }: Moment): Pick<BenchEntry, 'level' | 'volume'> {
  const { machine, contents, sludge, chance, inBook } = place
  if (machine.habits.looksAtLevel === 'never') return {}
  const out = runsAt(place, hour) ? machine.holdUp : 0
  const filled = (contents.litres + sludge - out) / machine.mark
  const litres = filled * machine.plate * chance.factor(0.02)
  if (machine.habits.looksAtLevel === 'sight') return { volume: toStep(litres, machine.plate > 1000 ? 20 : 2) }
  const [height, brim] = inBook.dipTable!.at(-1)!
  return { level: Math.min(height, toStep((litres * height) / brim, 2)) }
}

function analysesOf(
  place: Place,
  { stores }: Scene,
  moment: Moment,
): Pick<BenchEntry, 'hardness' | 'ph' | 'titration'> & { machineHours?: number } {
  const { chance, contents, due, machine, wandering } = place
  const day = dayOf(moment)
  const found: ReturnType<typeof analysesOf> = {}
  if (machine.habits.writesHours) found.machineHours = toStep(wandering.hoursRun[moment.hour]!, 1)
  if (day >= due.strip) {
    due.strip = day + machine.habits.stripEvery
    const hardness = (contents.hardness / contents.litres) * chance.factor(0.08)
    found.hardness = stores.hardnessBy === 'drops' ? toStep(hardness, 10) : betweenPads(hardness)
    found.ph = toStep(9.2 + chance.normal(0.1), 0.1)
  }
  if (machine.habits.titration !== null && day >= due.titration) {
    due.titration = day + 28
    found.titration = toStep(percentOf(contents) + machine.habits.titration + chance.normal(0.15), 0.1)
  }
  return found
}

export function betweenPads(value: number): NonNullable<BenchEntry['hardness']> {
  const above = pads.find((pad) => pad > value)
  if (above === undefined) return { atLeast: pads.at(-1)! }
  const low = pads[pads.indexOf(above) - 1]!
  return low === 0 ? { below: above } : { low, high: above }
}
