import { hardnessStrips, nitriteStrips, phMeter } from '../shop/equipment.ts'
import { padsAbout } from '../simulate/classes.ts'
import { phOf } from '../simulate/growth.ts'
import type { Random } from '../simulate/random.ts'
import { dayHourOf, timeOn } from '../simulate/shop-days.ts'
import { type ShopRun, standsStill } from '../simulate/shop-run.ts'
import { toStep, typedNumber } from '../simulate/steps.ts'
import { advance, isRunning, type SumpRun } from '../simulate/sump-run.ts'
import { concentrationOf, hardnessOf, trampOilOf } from '../simulate/sump-truth.ts'
import { isLocked } from './ending.ts'
import { onDuty } from './roster.ts'
import { takeSlide } from './slides.ts'
import { beginsOn } from './story.ts'
import { storeWaste } from './waste.ts'

const minuteMs = 60_000

/** What is looked at more rarely than strength and level: pH and slides, hardness, tramp oil, signs. */
export function planWeeks(shop: ShopRun): void {
  shop.days.weekdays.forEach((weekday, day) => {
    if (shop.calendar.open[day] !== true) return
    if (weekday === 1) each(shop, day, '10:05', 'skim', skim)
    if (weekday === 2) each(shop, day, '09:10', 'ph', readPh)
    if (weekday === 2 && isNitriteWeek(day)) each(shop, day, '09:12', 'nitrite', readNitrite)
    if (weekday === 2) each(shop, day, '13:05', 'slide', slideOnTuesday)
    if (weekday === 3 && Math.floor(day / 7) % 2 === 0) each(shop, day, '11:10', 'strip', readStrip)
    if (weekday === 5) each(shop, day, '12:10', 'signs', observe)
  })
  each(shop, shop.last - 1, '13:40', 'last slides', lastSlides)
}

/** Weekly until results are known to be low, every four weeks then. */
const isNitriteWeek = (day: number) => day < 30 || Math.floor(day / 7) % 4 === 0

/** One person's way past all sumps that are there, open and water-mixed. */
type Task = (shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random) => void

function each(shop: ShopRun, day: number, time: string, name: string, task: Task): void {
  const startMs = timeOn(shop.days, day, time)
  shop.sumps.forEach((run, i) => {
    const { id, fluid } = run.plan.document
    const isOut = isLocked(run.plan.ending, shop.last - day) || standsStill(shop, id, day)
    if (fluid === 'oil-22' || isOut || day <= beginsOn(shop, id)) return
    const ms = startMs + 4 * i * minuteMs
    shop.agenda.put(ms, () => {
      advance(run, shop, ms)
      const by = onDuty(shop, day, dayHourOf(shop.days, ms).hours)
      task(shop, run, ms, by, shop.randomOf(`${name} ${id} ${day}`))
    })
  })
}

function readPh(shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random): void {
  if (!random.chance(0.78)) return
  const { truth, target } = run
  const clean = phOf({ concentration: concentrationOf(truth), target, bacteria: truth.bacteria })
  const ph = toStep(clean + random.normal(0.05), phMeter.resolution)
  const { day } = dayHourOf(shop.days, ms)
  const weather = shop.weather[day]!
  const isWarm = isRunning(run, shop, ms)
  const temperature = Math.round(isWarm ? weather.runningTemperature : weather.restingTemperature)
  const isTaken = random.chance(0.12)
  shop.journal.write({
    kind: 'reading',
    sump: run.plan.document.id,
    atMs: ms,
    by,
    typed: { ph: typedNumber(ph), ...(isTaken ? { temperature: `${temperature} °C` } : {}) },
    fields: { ph, ...(isTaken ? { temperature } : {}), instrument: phMeter.id },
  })
}

/** Some comes of what lives in it, out of the nitrate of the water. */
function readNitrite(shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random): void {
  if (!random.chance(0.9)) return
  const clean = 0.8 * Math.exp(0.45 * Math.max(0, run.truth.bacteria - 2.5))
  const nitrite = padsAbout(nitriteStrips.pads, clean * Math.exp(random.normal(0.25)))
  const typed = 'low' in nitrite ? `${nitrite.low}–${nitrite.high} mg/L` : `${Object.values(nitrite)[0]} mg/L and over`
  shop.journal.write({
    kind: 'reading',
    sump: run.plan.document.id,
    atMs: ms,
    by,
    typed: { nitrite: typed },
    fields: { nitrite, instrument: nitriteStrips.id },
  })
}

function slideOnTuesday(shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random): void {
  if (random.chance(0.62)) takeSlide(shop, run, ms, by, random)
}

/** Slides that are still to be read on the last day. */
function lastSlides(shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random): void {
  if (['tc1', 'mill7', 'mill8'].includes(run.plan.document.id)) takeSlide(shop, run, ms, by, random)
}

function readStrip(shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random): void {
  if (!random.chance(0.8)) return
  const hardness = padsAbout(hardnessStrips.pads, hardnessOf(run.truth) * Math.exp(random.normal(0.12)))
  const typed =
    'low' in hardness ? `${hardness.low}–${hardness.high} mg/L` : `${Object.values(hardness)[0]} mg/L and over`
  shop.journal.write({
    kind: 'reading',
    sump: run.plan.document.id,
    atMs: ms,
    by,
    typed: { hardness: typed },
    fields: { hardness, instrument: hardnessStrips.id },
  })
}

function skim(shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random): void {
  const { truth, plan } = run
  if (trampOilOf(truth) < 0.8 || !random.chance(0.6)) return
  const litres = truth.trampOil * random.between(0.7, 0.9)
  truth.trampOil -= litres
  const written = Math.max(0.5, toStep(litres, litres > 10 ? 5 : 0.5))
  shop.journal.write({
    kind: 'skim',
    sump: plan.document.id,
    atMs: ms,
    by,
    typed: { litres: `${typedNumber(written)} L` },
    fields: { litres: written },
  })
  storeWaste(shop, ms + 15 * minuteMs, by, { into: 'oil', litres: written, from: plan.document.id })
}

function observe(shop: ShopRun, run: SumpRun, ms: number, by: string, random: Random): void {
  const { truth, plan } = run
  const signs = signsOf(run)
  if (signs.length === 0 || !random.chance(0.35)) return
  shop.journal.write({
    kind: 'observation',
    sump: plan.document.id,
    atMs: ms,
    by,
    fields: { signs, severity: truth.bacteria > 6.3 ? 'strong' : 'slight' },
  })
}

/** What can be seen and smelt at it. */
export function signsOf({ truth }: SumpRun): string[] {
  return [
    ...(truth.bacteria > 5.8 ? ['rancid smell'] : []),
    ...(trampOilOf(truth) > 1.4 ? ['oil on the surface'] : []),
    ...(hardnessOf(truth) < 60 ? ['foam'] : []),
    ...(hardnessOf(truth) > 900 ? ['deposits'] : []),
  ]
}
