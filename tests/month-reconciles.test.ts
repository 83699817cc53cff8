/**
 * The example shop's months, worked out a second time: straight sums over the raw entries of its exported book file, by code that shares nothing with the
 * report's. Compared to the cent and, litres, to the millionth.
 */
import { expect, test } from 'vitest'
import { exampleShop } from '../demo/src/index.ts'
import { inMemory, openBook, openSqliteStore } from '../packages/book/src/index.ts'
import { readMonth } from '../packages/book/src/report/index.ts'

const now = new Date('2026-11-28T15:00:00Z')
/** Every month of the year that the example tells whole, and the one that runs. */
const months = ['2025-12', ...Array.from({ length: 11 }, (_, n) => `2026-${String(n + 1).padStart(2, '0')}`)]

/** An entry of the file, with the fields that are read here. */
interface Raw {
  id: string
  kind: string
  at: string
  sump: string
  entry: string
  from: string
  about: { kind: string; id: string }
  changes: { fillVolume?: number }
  was: { pricePerLitre?: number; fillVolume: number }
  volume?: number
  level?: number
  pumps?: string
  strength?: number
  meter?: { id: string; count: number }
  toMark?: boolean
  fluid?: string
  water: string
  hours: number
  cleanerPercent: number
  litres: number
  stream: string
  document?: string
  answers?: string
  additive?: { name: string; litres: number }
}

/** A thing of the file, likewise. */
interface Thing {
  id: string
  class: string
  fluid: string
  dipTable?: [number, number][]
  holdUp: number
  fillVolume: number
  machines: string[]
  pricePerLitre: number
  costPerLitre: number
  litresPerCount: number
}

interface Costs {
  labourPerHour: number
  machinePerHour: number
  minutesPerStop: number
  cleanerPerLitre: number
  wastePerLitre: number
  wasteStreams: { stream: string; perLitre: number }[]
  wastePerPickup: number
  additives: { name: string; perLitre: number }[]
}

interface File {
  shop: { costs: Costs }
  fluids: Thing[]
  waters: Thing[]
  sumps: Thing[]
  meters: Thing[]
  entries: Raw[]
}

async function exported(): Promise<{ file: File; reports: Awaited<ReturnType<typeof readMonth>>[] }> {
  const store = await openSqliteStore(inMemory)
  const book = openBook(store, () => now)
  await book.loadExample((until) => JSON.stringify(exampleShop({ until })))
  let text = ''
  for await (const piece of book.export()) text += piece
  const reports = []
  for (const month of months) reports.push(await book.ask((parts, at) => readMonth(parts, { month, at })))
  await book.close()
  return { file: JSON.parse(text) as File, reports }
}

const { file, reports } = await exported()
const ranks: Record<string, number> = { setup: 0, charge: 1, drawoff: 4, skim: 4, transfer: 4, addition: 5 }
const rank = ({ kind }: Raw) => ranks[kind] ?? 3
const entries = file.entries.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at) || rank(a) - rank(b))
const voided = new Set(entries.filter(({ kind }) => kind === 'void').map(({ entry }) => entry))
const standing = entries.filter(({ id }) => !voided.has(id))
/** Entries of the example carry the shop's own offset: their text begins with its calendar day. */
const monthOf = ({ at }: Pick<Raw, 'at'>) => at.slice(0, 7)
const byId = (list: Thing[]) => new Map(list.map((one) => [one.id, one]))
const [fluids, waters] = [byId(file.fluids), byId(file.waters)]
const [sumps, meters] = [byId(file.sumps), byId(file.meters)]

/** The price of a fluid on the day of an entry, from the set-ups that changed it. */
function priceOf(fluid: string, { at }: Raw): number {
  const changes = standing.filter(({ kind, about }) => kind === 'setup' && about.kind === 'fluid' && about.id === fluid)
  const before = changes.find(({ from, was }) => was.pricePerLitre !== undefined && at.slice(0, 10) < from)
  return before?.was.pricePerLitre ?? fluids.get(fluid)!.pricePerLitre
}

function levelOf({ volume, level, sump }: Raw): number | null {
  if (volume !== undefined) return volume
  const table = sumps.get(sump)!.dipTable
  if (level === undefined || table === undefined) return null
  const above = table.findIndex(([mm]) => mm >= level)
  if (above <= 0) return above === 0 ? table[0]![1] : null
  const [[x0, y0], [x1, y1]] = [table[above - 1]!, table[above]!]
  return y0 + ((y1 - y0) * (level - x0)) / (x1 - x0)
}

const markOn = (sump: string, { at }: Raw): number => {
  const moved = standing.find(
    ({ kind, about, changes }) => kind === 'setup' && about.id === sump && changes.fillVolume !== undefined,
  )
  return moved !== undefined && at.slice(0, 10) < moved.from ? moved.was.fillVolume : sumps.get(sump)!.fillVolume
}

interface Pour {
  entry: Raw
  litres: number
  strength: number
  written: boolean
}

/** Every pour whose litres and strength are known, in one walk over the whole book. */
function pours(): Pour[] {
  const counts = new Map<string, number>()
  const levels = new Map<string, { at: number; litres: number }>()
  const found: Pour[] = []
  for (const entry of standing) {
    const { kind, sump } = entry
    if (kind === 'reading') {
      const seen = levelOf(entry)
      const out = entry.pumps === 'running' ? sumps.get(sump)!.holdUp : 0
      if (seen !== null) levels.set(sump, { at: Date.parse(entry.at), litres: seen + out })
    }
    if (kind === 'drawoff' || kind === 'transfer') levels.delete(sump)
    if (kind !== 'charge' && kind !== 'addition') continue
    const neat = fluids.get(sumps.get(sump)!.fluid)!.class === 'straight-oil'
    const strength = entry.strength ?? (neat ? 100 : null)
    const before = entry.meter === undefined ? undefined : counts.get(entry.meter.id)
    if (entry.meter !== undefined) counts.set(entry.meter.id, entry.meter.count)
    const metered =
      before === undefined ? undefined : (entry.meter!.count - before) * meters.get(entry.meter!.id)!.litresPerCount
    const level = levels.get(sump)
    const fresh = level !== undefined && Date.parse(entry.at) - level.at <= 12 * 3_600_000
    const fill = entry.toMark === true && fresh ? Math.max(0, markOn(sump, entry) - level.litres) : undefined
    levels.delete(sump)
    const litres = entry.volume ?? metered ?? fill
    if (litres === undefined || strength === null) continue
    found.push({ entry, litres, strength, written: entry.volume !== undefined || metered !== undefined })
  }
  return found
}

const poured = pours()
const total = (numbers: number[]) => numbers.reduce((sum, one) => sum + one, 0)
/** Half a cent goes up; a double may fall short of it by some 1e-13. */
const cents = (money: number[]) => Math.round(100 * total(money) + 1e-7)

test('the months hold what they are to prove: pours by meter and to the mark, a price that changed, a withdrawn entry, pickups', () => {
  expect(poured.filter(({ entry }) => entry.meter !== undefined).length).toBeGreaterThan(20)
  expect(poured.filter(({ written }) => !written).length).toBeGreaterThan(20)
  expect(voided.size).toBeGreaterThan(0)
  expect(
    new Set(
      poured
        .filter(({ entry }) => sumps.get(entry.sump)!.fluid === 'blue-40')
        .map(({ entry }) => priceOf('blue-40', entry)),
    ).size,
  ).toBe(2)
  expect(reports.some(({ cost }) => cost.parts.waste > 0)).toBe(true)
  expect(reports.some(({ cost }) => cost.parts.cleanouts > 0)).toBe(true)
  expect(reports.some(({ cost }) => cost.parts.additives > 0)).toBe(true)
})

test.each(reports)('$month: litres are those of the journal', ({ month, cost }) => {
  const mine = poured.filter(({ entry, written }) => written && monthOf(entry) === month)
  expect(cost.litres.mix).toBeCloseTo(total(mine.map(({ litres }) => litres)), 6)
  expect(cost.litres.concentrate).toBeCloseTo(total(mine.map(({ litres, strength }) => (litres * strength) / 100)), 6)
  expect(cost.litres.water).toBeCloseTo(total(mine.map(({ litres, strength }) => litres * (1 - strength / 100))), 6)
  const byLevel = poured.filter(({ entry, written }) => !written && monthOf(entry) === month)
  expect(cost.litres.byLevel.fills).toBe(byLevel.length)
  expect(cost.litres.byLevel.mix).toBeCloseTo(total(byLevel.map(({ litres }) => litres)), 6)
  const perSump = total(cost.sumps.map(({ litres }) => litres.mix))
  expect(perSump).toBeCloseTo(cost.litres.mix, 6)
})

test.each(reports)('$month: money is that of the journal, to the cent, and its pieces add up', ({ month, cost }) => {
  const { costs } = file.shop
  for (const { sump, parts, cents: sumpCents, stops } of cost.sumps) {
    const own = (written: boolean) =>
      poured.filter(({ entry, written: is }) => entry.sump === sump && is === written && monthOf(entry) === month)
    const concentrate = (written: boolean) =>
      cents(
        own(written).map(
          ({ entry, litres, strength }) =>
            ((litres * strength) / 100) * priceOf(entry.fluid ?? sumps.get(entry.sump)!.fluid, entry),
        ),
      )
    const water = (written: boolean) =>
      cents(
        own(written).map(
          ({ entry, litres, strength }) => litres * (1 - strength / 100) * (waters.get(entry.water)?.costPerLitre ?? 0),
        ),
      )
    expect(parts.concentrate, `${sump} concentrate`).toBe(concentrate(true) + concentrate(false))
    expect(parts.water, `${sump} water`).toBe(water(true) + water(false))
    const dosed = standing.filter(
      ({ kind, sump: at, additive, ...one }) =>
        kind === 'addition' && at === sump && additive !== undefined && monthOf(one) === month,
    )
    const priceOfDose = (name: string) => costs.additives.find((one) => one.name === name)!.perLitre
    expect(parts.additives, `${sump} additives`).toBe(
      cents(dosed.map(({ additive }) => additive!.litres * priceOfDose(additive!.name))),
    )
    expect(parts.rounds).toBe(Math.round((100 * stops * costs.minutesPerStop * costs.labourPerHour) / 60))
    const cleaned = standing.filter(
      (entry) => entry.kind === 'cleanout' && entry.sump === sump && monthOf(entry) === month,
    )
    expect(parts.cleanouts).toBe(
      cents(
        cleaned.map(({ hours, cleanerPercent }) => {
          const { fillVolume, machines } = sumps.get(sump!)!
          const cleaner = ((fillVolume * cleanerPercent) / 100) * costs.cleanerPerLitre
          return cleaner + hours * costs.labourPerHour + hours * machines.length * costs.machinePerHour
        }),
      ),
    )
    expect(total(Object.values(parts))).toBe(sumpCents)
  }
  const pickups = standing.filter((entry) => entry.kind === 'pickup' && monthOf(entry) === month)
  const streamPrice = (stream: string) =>
    costs.wasteStreams.find((one) => one.stream === stream)?.perLitre ?? costs.wastePerLitre
  expect(cost.parts.waste).toBe(
    cents(pickups.map(({ stream, litres }) => litres * streamPrice(stream) + costs.wastePerPickup)),
  )
  expect(total(cost.sumps.map((one) => one.cents))).toBe(cost.cents)
  expect(total(Object.values(cost.parts))).toBe(cost.cents)
})

test.each(reports)('$month: stops, readings, waste, stock, people and the head are those of the journal', (report) => {
  const mine = standing.filter((entry) => monthOf(entry) === report.month)
  expect(report.entries).toBe(mine.length)
  for (const { sump, readings, out } of report.sumps) {
    const own = mine.filter((entry) => entry.sump === sump)
    expect(readings.all).toBe(own.filter(({ kind }) => kind === 'reading').length)
    expect(out.skimmed).toBeCloseTo(total(own.filter(({ kind }) => kind === 'skim').map(({ litres }) => litres)), 9)
    const kinds = ['reading', 'addition', 'drawoff', 'transfer', 'skim', 'observation', 'skip', 'upkeep']
    const times = own
      .filter((entry) => kinds.includes(entry.kind) && entry.answers === undefined)
      .map(({ at }) => Date.parse(at))
      .sort((a, b) => a - b)
    const stops = times.filter((ms, i) => i === 0 || ms - times[i - 1]! > 20 * 60_000).length
    expect(report.cost.sumps.find((one) => one.sump === sump)!.stops).toBe(stops)
  }
  const of = (kind: string) => mine.filter((entry) => entry.kind === kind)
  expect(report.waste.stored.map(({ litres }) => litres)).toEqual(of('stored').map(({ litres }) => litres))
  expect(report.waste.pickups.map(({ document, litres }) => [document, litres])).toEqual(
    of('pickup').map(({ document, litres }) => [document ?? null, litres]),
  )
  for (const { fluid, received, issued } of report.stock) {
    const litres = (kind: string) =>
      total(
        of(kind)
          .filter((entry) => entry.fluid === fluid)
          .map((entry) => entry.litres),
      )
    expect([received, issued]).toEqual([litres('receipt'), litres('issue')])
  }
  expect(total(report.people.map((person) => person.entries))).toBe(mine.length)
  expect(report.head.seq).toBe(entries.length)
  expect(report.corrections.map(({ entry }) => entry)).toEqual(
    entries.filter(({ id, ...rest }) => voided.has(id) && monthOf(rest) === report.month).map(({ id }) => id),
  )
})
