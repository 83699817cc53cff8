import { bucket, hoseMeter, mixer } from '../shop/equipment.ts'
import { fluidOf } from '../shop/fluids.ts'
import { waterOf } from '../shop/waters.ts'
import type { Random } from '../simulate/random.ts'
import { dayHourOf } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { typedNumber } from '../simulate/steps.ts'
import { advance, type SumpRun } from '../simulate/sump-run.ts'
import { takeIn } from '../simulate/sump-truth.ts'

/** What somebody decides to pour: litres by the book's measure, and the percent set or mixed. */
export interface Pour {
  volume: number
  strength: number
}

/** How it comes to be written. */
export interface Writing {
  by: string
  /** False for a pour that nobody writes down. */
  written: boolean
  /** False where it was filled to the mark and the amount not counted. */
  counted: boolean
  note?: string
  recordedMs?: number
}

/** The dial nearest to a strength, or plain water where even the lowest is too strong. */
export function dialNearest(wanted: number, { least, most }: { least: number; most: number }): number {
  const strengths = [0, ...mixer.settings.map(([, percent]) => percent)]
  const allowed = strengths.filter((percent) => percent >= least && percent <= most)
  return allowed.reduce((best, percent) => (Math.abs(percent - wanted) < Math.abs(best - wanted) ? percent : best))
}

/** A volume as this sump is poured: whole buckets, whole litres, fives of the hose. */
export function pourable({ plan }: SumpRun, litres: number): number {
  switch (plan.habits.pouredBy) {
    case 'bucket':
      return Math.max(1, Math.ceil(litres / bucket.capacity - 0.1)) * bucket.capacity
    case 'jug':
    case 'meter':
      return Math.max(1, Math.ceil(litres))
    case 'hose':
      return Math.max(5, Math.ceil(litres / 5) * 5)
    case 'to-mark':
      return litres
  }
}

/** Pours, truly and on paper. The mixer and the eye err; what is written is what was meant. */
export function pourInto(shop: ShopRun, run: SumpRun, ms: number, pour: Pour, writing: Writing, random: Random): void {
  advance(run, shop, ms)
  const { day } = dayHourOf(shop.days, ms)
  const volume = Math.min(poured(run, pour, random), roomIn(run))
  if (volume <= 0) return
  const water = shop.waterOf.get(run.plan.document.id)!
  takeInMix(shop, run, day, { volume, strength: trueStrength(shop, run, pour.strength, random), water })
  if (run.plan.habits.pouredBy === 'meter') shop.meterCount += Math.round(volume)
  if (writing.written) write(shop, run, ms, pour, writing)
}

/** Litres and percent of a mix, and the water it is made with. */
export interface Mix {
  volume: number
  strength: number
  water: string
}

/** Mix comes into a sump; its concentrate comes out of the stock. */
export function takeInMix(shop: ShopRun, run: SumpRun, day: number, { volume, strength, water }: Mix): void {
  const { fluid } = run.plan.document
  const hardness = (1 - strength / 100) * waterOf(water).hardness * seasonOf(day)
  takeIn(run.truth, day, 'poured', { volume, strength, hardness })
  shop.used.set(fluid, (shop.used.get(fluid) ?? 0) + (volume * strength) / 100)
}

/** Tap water drifts by some 6 % over the year. */
const seasonOf = (day: number) => 1 + 0.06 * Math.sin((2 * Math.PI * day) / 365.25)

function poured({ plan, truth }: SumpRun, { volume }: Pour, random: Random): number {
  if (plan.habits.pouredBy !== 'to-mark') return volume * (1 + random.normal(0.02))
  const { fillVolume } = plan.document
  return fillVolume * plan.nature.volumeScale * (1 + random.normal(0.008)) - truth.volume
}

/** Nobody pours over the brim. */
const roomIn = ({ plan, truth }: SumpRun) => 0.98 * plan.document.capacity * plan.nature.volumeScale - truth.volume

function trueStrength(shop: ShopRun, { plan, target }: SumpRun, strength: number, random: Random): number {
  if (target === 100) return 100
  const error = random.normal(plan.habits.pouredBy === 'jug' ? 0.05 : 0.03)
  return strength * (plan.habits.pouredBy === 'jug' ? 1 : shop.mixerGain) * (1 + error)
}

function write(shop: ShopRun, run: SumpRun, ms: number, { volume, strength }: Pour, writing: Writing): void {
  const { id, fluid } = run.plan.document
  const isOil = fluidOf(fluid).class === 'straight-oil'
  const amount = writing.counted ? amountWritten(shop, run, volume) : uncounted
  if (run.plan.habits.pouredBy === 'meter') shop.meterWritten = true
  shop.journal.write({
    kind: 'addition',
    sump: id,
    atMs: ms,
    by: writing.by,
    ...(writing.recordedMs === undefined ? {} : { recordedMs: writing.recordedMs }),
    ...(writing.note === undefined ? {} : { note: writing.note }),
    typed: { ...amount.typed, ...(isOil ? {} : { strength: `${typedNumber(strength)} %` }) },
    fields: { ...amount.fields, ...(isOil ? {} : { strength, water: shop.waterOf.get(id) }) },
  })
  const { day } = dayHourOf(shop.days, ms)
  shop.poured.set(day, [...(shop.poured.get(day) ?? []), run.plan.document.name])
}

interface Amount {
  fields: Record<string, unknown>
  typed: Record<string, string>
}

const uncounted: Amount = { fields: { toMark: true }, typed: {} }

/** The meter's first count has none before it, so the litres stand beside it. */
function amountWritten({ meterCount, meterWritten }: ShopRun, { plan }: SumpRun, volume: number): Amount {
  switch (plan.habits.pouredBy) {
    case 'to-mark':
      return uncounted
    case 'meter':
      return {
        fields: { ...(meterWritten ? {} : { volume }), meter: { id: hoseMeter.id, count: meterCount } },
        typed: { ...(meterWritten ? {} : { volume: `${volume} L` }), meter: String(meterCount) },
      }
    case 'bucket':
      return { fields: { volume }, typed: { volume: `${volume / bucket.capacity} × ${bucket.capacity} L` } }
    default:
      return { fields: { volume }, typed: { volume: `${typedNumber(volume)} L` } }
  }
}
