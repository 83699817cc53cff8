import { dayHourOf, instantText, timeOn } from '../simulate/shop-days.ts'
import { type ShopRun, standstills, sumpOf } from '../simulate/shop-run.ts'
import { toStep } from '../simulate/steps.ts'
import { advance, type SumpRun } from '../simulate/sump-run.ts'
import { arrangeBefore } from './appointment.ts'
import { charge, empty, heelOf } from './charge.ts'
import { openSheet, signSheet } from './job-sheet.ts'
import { takeInMix } from './pour.ts'
import { early, keeper } from './roster.ts'
import { lotOf } from './stock.ts'
import { turningPoints } from './story.ts'
import { storeWaste } from './waste.ts'

const hourMs = 3_600_000

/**
 * A mill turns rancid after it stood, is emptied, cleaned and filled again by a sheet that is signed to its end, as is a lathe after half a year; the grinder's sheet still
 * waits for its slide on the last day, and another is planned.
 */
export function planCleanouts(shop: ShopRun): void {
  for (const [id, { from, to }] of Object.entries(standstills)) planStandstill(shop, id, from, to)
  const mill = sumpOf(shop, 'mill8')
  arrangeBefore(shop, turningPoints.rancid, '06:50', (ms) => turn(shop, mill, ms))
  arrangeBefore(shop, turningPoints.cleanout, '08:30', (ms) => clean(shop, mill, ms, { slideAfterDays: 9 }))
  const grinder = sumpOf(shop, 'grinder')
  arrangeBefore(shop, turningPoints.grinderCleanout, '08:30', (ms) =>
    clean(shop, grinder, ms, { slideAfterDays: null }),
  )
  const lathe = sumpOf(shop, 'lathe12')
  arrangeBefore(shop, turningPoints.latheCleanout, '08:30', (ms) => clean(shop, lathe, ms, { slideAfterDays: 8 }))
  arrangeBefore(shop, 1, '14:10', (ms) => openSheet(shop, lathe, ms, { onMs: ms + 5 * 24 * hourMs }))
}

function planStandstill(shop: ShopRun, id: string, fromDaysLeft: number, toDaysLeft: number): void {
  const fromMs = timeOn(shop.days, shop.last - fromDaysLeft, '06:00')
  const toMs = timeOn(shop.days, shop.last - toDaysLeft + 1, '06:00')
  shop.agenda.put(toMs, () => {
    const fields = { from: instantText(shop.days, fromMs), to: instantText(shop.days, toMs) }
    shop.journal.write({ kind: 'idle', sump: id, atMs: fromMs, by: keeper, recordedMs: toMs + 600_000, fields })
  })
}

/** What grew while it stood shows once it runs again. */
function turn(shop: ShopRun, run: SumpRun, ms: number): void {
  advance(run, shop, ms)
  run.truth.bacteria = 6.9
  const fields = { signs: ['rancid smell', 'grey-black colour'], severity: 'strong' }
  const sump = run.plan.document.id
  shop.journal.write({ kind: 'observation', sump, atMs: ms, by: early, note: 'Since it stood', fields })
}

/** @param slideAfterDays when the slide that accepts it was read; null where it is still to be */
function clean(shop: ShopRun, run: SumpRun, ms: number, { slideAfterDays }: { slideAfterDays: number | null }): void {
  const hour = (hours: number) => ms + hours * hourMs
  const job = openSheet(shop, run, hour(-1), { onMs: ms })
  const drained = empty(shop, run, ms)
  shop.agenda.put(hour(4), () => rinse(shop, run, hour(4)))
  shop.agenda.put(hour(6), () => {
    const rinsed = empty(shop, run, hour(6))
    record(shop, run, hour(6), toStep(drained + rinsed, 10))
  })
  shop.agenda.put(hour(6.5), () => {
    const lot = lotOf(run.plan.document.fluid, 2)
    charge(shop, run, hour(6.5), early, lot)
    run.truth.bacteria = 2.6
    signSheet(shop, run, job, { ms, lot, slideAfterDays })
  })
}

/** A part charge of 2 % fluid. */
function rinse(shop: ShopRun, run: SumpRun, ms: number): void {
  advance(run, shop, ms)
  const { day } = dayHourOf(shop.days, ms)
  takeInMix(shop, run, day, { volume: 0.4 * run.plan.document.fillVolume, strength: 2, water: 'tap' })
  run.truth.trampOil *= 0.2
}

function record(shop: ShopRun, run: SumpRun, ms: number, wasteVolume: number): void {
  const sump = run.plan.document.id
  const fields = { cleaner: 'Alkaline system cleaner', cleanerPercent: 2, hours: 4, rinses: 1, wasteVolume }
  const note = `About ${heelOf(run)} L stay in corners and lines`
  shop.journal.write({ kind: 'cleanout', sump, atMs: ms, by: early, note, fields })
  storeWaste(shop, ms + 600_000, early, { into: 'emulsion', litres: wasteVolume, from: sump })
}
