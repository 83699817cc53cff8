import { expect, test } from 'vitest'
import type { EntryDocument, FluidDocument, SumpDocument } from './book-document.ts'
import { exampleShop } from './index.ts'
import { percentOf } from './simulate/refractometer.ts'
import { secondAt } from './simulate/straight-lines.ts'

/** Where a sump stands by its last reading and what was poured since, by plain arithmetic. */
interface Standing {
  volume: number
  concentration: number | null
  readAt: number
}

function standingOf(entries: EntryDocument[], sump: SumpDocument, fluid: FluidDocument): Standing {
  const own = entries.filter((entry) => entry.sump === sump.id)
  const reading = own.findLast(({ kind, volume, level }) => kind === 'reading' && (volume ?? level) !== undefined)!
  const seen = (reading.volume as number | undefined) ?? secondAt(sump.dipTable!, reading.level as number)
  let volume = seen + (reading.pumps === 'running' ? sump.holdUp : 0)
  let concentration = reading.brix === undefined ? null : percentOf(fluid, reading.brix as number)
  const pours = own.filter(({ kind, at }) => kind === 'addition' && Date.parse(at) >= Date.parse(reading.at))
  for (const pour of pours) {
    const poured = pour.toMark === true ? sump.fillVolume - volume : ((pour.volume as number | undefined) ?? 0)
    if (concentration !== null) {
      concentration = (concentration * volume + (pour.strength as number) * poured) / (volume + poured)
    }
    volume += poured
  }
  return { volume, concentration, readAt: Date.parse(reading.at) }
}

const inOrder = ['tc1', 'slide3', 'mill7', 'mill8', 'grinder', 'central', 'lathe12']

const ends = ['2026-10-07T10:00:00+02:00', '2026-12-27T03:00:00Z', '2026-03-01T16:30:00Z', '2026-07-06T04:10:00Z']
const shops = ends.flatMap((until) => [1, 2, 3, 4, 5].map((seed) => ({ seed, until })))

test.each(shops)('the last day has something of each to show: seed $seed, until $until', ({ seed, until }) => {
  const book = exampleShop({ seed, until })
  const sumps = new Map(book.sumps.map((sump) => [sump.id, sump]))
  const fluidOf = (sump: SumpDocument) => book.fluids.find(({ id }) => id === sump.fluid)!
  const standing = (id: string) => standingOf(book.entries, sumps.get(id)!, fluidOf(sumps.get(id)!))
  const band = (id: string) => fluidOf(sumps.get(id)!).limits!.concentration!

  // A lean one, with enough fluid to run and room for a pour.
  expect(standing('tc2').concentration).toBeLessThan(band('tc2').low - 0.1)
  expect(standing('tc2').volume).toBeGreaterThan(sumps.get('tc2')!.minVolume)
  expect(standing('tc2').volume).toBeLessThan(0.93 * sumps.get('tc2')!.fillVolume)
  // A rich one that water to its mark brings back into its band.
  expect(standing('mill4').concentration).toBeGreaterThan(band('mill4').high + 0.1)
  expect(standing('mill4').volume).toBeLessThan(0.93 * sumps.get('mill4')!.fillVolume)
  const watered = (standing('mill4').concentration! * standing('mill4').volume) / sumps.get('mill4')!.fillVolume
  expect(watered).toBeLessThan(band('mill4').high)
  // One below the pumps' suction, but not dry.
  expect(standing('mill5').volume).toBeLessThan(sumps.get('mill5')!.minVolume)
  expect(standing('mill5').volume).toBeGreaterThan(0.6 * sumps.get('mill5')!.minVolume)
  // One that nobody read for two weeks.
  expect((Date.parse(until) - standing('saw').readAt) / 86_400_000).toBeGreaterThan(14)
  // The others: at their mark or a bucket above it, and in their band.
  for (const id of inOrder) {
    const { volume, concentration } = standing(id)
    const { fillVolume, capacity } = sumps.get(id)!
    expect(volume, id).toBeGreaterThanOrEqual(0.985 * fillVolume)
    expect(volume, id).toBeLessThan(capacity)
    expect(concentration, id).toBeGreaterThanOrEqual(band(id).low)
    expect(concentration, id).toBeLessThanOrEqual(band(id).high)
  }
  expect(standing('central').volume).toBeGreaterThanOrEqual(sumps.get('central')!.fillVolume)
})

test('the newest entry lies within an hour before the end, the last note is of the evening before', () => {
  for (const until of ends) {
    const { entries } = exampleShop({ until })
    const newest = Math.max(...entries.map(({ recordedAt }) => Date.parse(recordedAt)))
    expect(newest).toBeLessThanOrEqual(Date.parse(until))
    expect(newest).toBeGreaterThan(Date.parse(until) - 3_600_000)
    const note = entries.findLast(({ kind }) => kind === 'handover')!
    expect(note.at).toMatch(/T21:40:00/)
    expect((Date.parse(until) - Date.parse(note.at)) / 3_600_000).toBeLessThan(26)
  }
})

test('slides are still to be read on the last day', () => {
  const { entries } = exampleShop({ until: ends[0]! })
  const answered = new Set(entries.map(({ answers }) => answers))
  const open = entries.filter(({ id, pending, at }) => pending === true && !answered.has(id) && at > '2026-10-06')
  expect(open.length).toBeGreaterThanOrEqual(3)
})
