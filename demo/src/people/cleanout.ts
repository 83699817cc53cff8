import { dayHourOf, instantText, timeOn } from '../simulate/shop-days.ts'
import { type ShopRun, standstills, sumpOf } from '../simulate/shop-run.ts'
import { toStep } from '../simulate/steps.ts'
import { advance, type SumpRun } from '../simulate/sump-run.ts'
import { arrangeBefore } from './appointment.ts'
import { charge, empty, heelOf } from './charge.ts'
import { takeInMix } from './pour.ts'
import { lotOf } from './stock.ts'
import { turningPoints } from './story.ts'
import { storeWaste } from './waste.ts'

const sump = 'mill8'
const steps = [
  'Pumps off and locked',
  'Drained and chips out',
  'Cleaner through every pump',
  'Rinsed',
  'Filled and run',
]

/** A mill turns rancid after it stood, is emptied, cleaned and filled again. */
export function planCleanout(shop: ShopRun): void {
  const run = sumpOf(shop, sump)
  for (const [id, { from, to }] of Object.entries(standstills)) planStandstill(shop, id, from, to)
  arrangeBefore(shop, turningPoints.rancid, '06:50', (ms) => turn(shop, run, ms))
  arrangeBefore(shop, turningPoints.cleanout, '08:30', (ms) => clean(shop, run, ms))
}

function planStandstill(shop: ShopRun, id: string, fromDaysLeft: number, toDaysLeft: number): void {
  const fromMs = timeOn(shop.days, shop.last - fromDaysLeft, '06:00')
  const toMs = timeOn(shop.days, shop.last - toDaysLeft + 1, '06:00')
  shop.agenda.put(toMs, () => {
    const fields = { from: instantText(shop.days, fromMs), to: instantText(shop.days, toMs) }
    shop.journal.write({ kind: 'idle', sump: id, atMs: fromMs, by: 'p3', recordedMs: toMs + 600_000, fields })
  })
}

/** What grew while it stood shows once it runs again. */
function turn(shop: ShopRun, run: SumpRun, ms: number): void {
  advance(run, shop, ms)
  run.truth.bacteria = 6.9
  const fields = { signs: ['rancid smell', 'grey-black colour'], severity: 'strong' }
  shop.journal.write({ kind: 'observation', sump, atMs: ms, by: 'p1', note: 'Since it stood', fields })
}

function clean(shop: ShopRun, run: SumpRun, ms: number): void {
  const hour = (hours: number) => ms + hours * 3_600_000
  const drained = empty(shop, run, ms)
  shop.agenda.put(hour(4), () => rinse(shop, run, hour(4)))
  shop.agenda.put(hour(6), () => {
    const rinsed = empty(shop, run, hour(6))
    record(shop, run, hour(6), toStep(drained + rinsed, 10))
  })
  shop.agenda.put(hour(6.5), () => {
    charge(shop, run, hour(6.5), 'p1', lotOf(run.plan.document.fluid, 2))
    run.truth.bacteria = 2.6
    steps.forEach((step, i) => {
      shop.journal.write({
        kind: 'signoff',
        sump,
        atMs: hour(0.5 + 1.5 * i),
        by: 'p1',
        recordedMs: hour(7) + i * 60_000,
        fields: { step },
      })
    })
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
  const fields = {
    cleaner: 'Alkaline system cleaner',
    cleanerPercent: 2,
    hours: 4,
    rinses: 1,
    wasteVolume,
    checklist: [...steps],
  }
  const note = `About ${heelOf(run)} L stay in corners and lines`
  shop.journal.write({ kind: 'cleanout', sump, atMs: ms, by: 'p1', note, fields })
  storeWaste(shop, ms + 600_000, 'p1', { into: 'emulsion', litres: wasteVolume, from: sump })
}
