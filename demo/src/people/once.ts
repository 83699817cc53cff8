import { dayHourOf, timeOn } from '../simulate/shop-days.ts'
import { type ShopRun, sumpOf } from '../simulate/shop-run.ts'
import { advance } from '../simulate/sump-run.ts'
import { takeIn, takeOut } from '../simulate/sump-truth.ts'
import { arrangeBefore } from './appointment.ts'
import { early, keeper, late } from './roster.ts'
import { oldMark, turningPoints } from './story.ts'
import { storeWaste } from './waste.ts'

/** What happened once: other water, a moved mark, a dearer fluid, buckets from machine to machine, a weeping seam. */
export function planOnce(shop: ShopRun): void {
  arrangeBefore(shop, turningPoints.deionisedAtMill7, '14:30', (ms) => {
    shop.waterOf.set('mill7', 'deionised')
    const text = 'Mill 7 is topped up with deionised water from now on, its strip was at the last pad.'
    shop.journal.write({ kind: 'handover', about: { kind: 'shop' }, atMs: ms, by: late, fields: { text } })
  })
  arrangeBefore(shop, turningPoints.markMoved, '05:00', (ms) => {
    change(shop, ms, { kind: 'sump', id: 'slide3' }, { fillVolume: 120 }, { fillVolume: oldMark })
  })
  arrangeBefore(shop, turningPoints.priceRaised, '08:00', (ms) => {
    change(shop, ms, { kind: 'fluid', id: 'blue-40' }, { pricePerLitre: 4.9 }, { pricePerLitre: 4.6 })
  })
  for (const daysLeft of [95, 33]) arrangeBefore(shop, daysLeft, '13:30', (ms) => carry(shop, ms, 'tc1', 'lathe12', 12))
  arrangeBefore(shop, 120, '10:40', (ms) => drawOff(shop, ms, 'mill4', 40))
  arrangeBefore(shop, 35, '10:40', (ms) => drawOff(shop, ms, 'lathe12', 20))
  arrangeBefore(shop, turningPoints.heavyJobAtTc2, '06:10', (ms) => takeHeavyJob(shop, ms))
  weep(shop)
}

type Values = Record<string, unknown>

function change(shop: ShopRun, ms: number, about: { kind: string; id: string }, changes: Values, was: Values): void {
  const from = shop.days.dates[dayHourOf(shop.days, ms).day]
  shop.journal.write({ kind: 'setup', about, atMs: ms, by: keeper, fields: { changes, was, from } })
}

/** A bucket dipped from one sump into another. */
function carry(shop: ShopRun, ms: number, from: string, to: string, litres: number): void {
  const [source, sink] = [sumpOf(shop, from), sumpOf(shop, to)]
  advance(source, shop, ms)
  advance(sink, shop, ms)
  const { day } = dayHourOf(shop.days, ms)
  takeIn(sink.truth, day, 'moved-in', takeOut(source.truth, day, 'moved-out', litres))
  shop.journal.write({
    kind: 'transfer',
    sump: from,
    atMs: ms,
    by: early,
    typed: { volume: '1 × 12 L' },
    note: 'For the trainees',
    fields: { volume: litres, to },
  })
}

function drawOff(shop: ShopRun, ms: number, id: string, litres: number): void {
  const run = sumpOf(shop, id)
  advance(run, shop, ms)
  takeOut(run.truth, dayHourOf(shop.days, ms).day, 'drawn-off', litres)
  shop.journal.write({
    kind: 'drawoff',
    sump: id,
    atMs: ms,
    by: early,
    typed: { volume: `${litres} L` },
    note: 'To get at the strainer',
    fields: { volume: litres },
  })
  storeWaste(shop, ms + 600_000, early, { into: 'emulsion', litres, from: id })
}

/** Bulky swarf that carries off four times as much as an ordinary job, to the end. */
function takeHeavyJob(shop: ShopRun, ms: number): void {
  const run = sumpOf(shop, 'tc2')
  const job = { material: 'brass', process: 'roughing', carryOff: 4 }
  const from = dayHourOf(shop.days, ms).day
  run.jobs = run.jobs.map((usual, day) => (day < from ? usual : job))
  const { material, process } = job
  shop.journal.write({
    kind: 'job',
    sump: 'tc2',
    atMs: ms,
    by: early,
    note: 'Bulky swarf',
    fields: { material, process },
  })
}

/** A seam of Mill 5 opens at the suction's height. */
function weep(shop: ShopRun): void {
  const run = sumpOf(shop, 'mill5')
  const { minVolume } = run.plan.document
  const height = minVolume * run.plan.nature.volumeScale
  run.leak = { fromMs: timeOn(shop.days, shop.last - turningPoints.leak, '08:00'), height, perHour: 0.08 }
}
