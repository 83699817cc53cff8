import { refractometer } from '../shop/equipment.ts'
import type { Random } from '../simulate/random.ts'
import { dayHourOf } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { typedNumber } from '../simulate/steps.ts'
import type { SumpRun } from '../simulate/sump-run.ts'
import type { Look } from './look.ts'
import { brixWritten, withdraw } from './misread.ts'

const minuteMs = 60_000

/** What of a look is written down. */
export interface Noted {
  by: string
  level: boolean
  pumps: boolean
  recordedMs?: number
}

/** Writes a reading down as found, now and then with a slip. */
export function writeReading(shop: ShopRun, run: SumpRun, ms: number, look: Look, noted: Noted): void {
  const { id } = run.plan.document
  if (look.brix === null) {
    write(shop, id, ms, look, null, noted)
    return
  }
  const { day } = dayHourOf(shop.days, ms)
  const { brix, slip } = brixWritten(shop, id, day, look.brix)
  const entry = write(shop, id, ms, look, brix, noted)
  if (slip?.withdrawn !== true) return
  const noticedMs = (noted.recordedMs ?? ms) + 25 * minuteMs
  withdraw(shop, id, noticedMs, noted.by, entry, look.brix)
  write(shop, id, ms, look, look.brix, { ...noted, recordedMs: noticedMs + minuteMs })
}

/** How long before the end people left a level or the pumps out now and then. */
export const misses = (random: Random, daysLeft: number, probability: number): boolean =>
  random.chance(probability) && daysLeft > 10

function write(shop: ShopRun, sump: string, atMs: number, look: Look, brix: number | null, noted: Noted): string {
  const level = noted.level ? levelFields(look) : { fields: {}, typed: {} }
  const isOdd = brix !== null && brix > 20
  return shop.journal.write({
    kind: 'reading',
    sump,
    atMs,
    by: noted.by,
    ...(noted.recordedMs === undefined ? {} : { recordedMs: noted.recordedMs }),
    typed: { ...(brix === null ? {} : { brix: `${typedNumber(brix)} °Brix` }), ...level.typed },
    fields: {
      ...(brix === null ? {} : { brix }),
      ...level.fields,
      ...(noted.pumps ? { pumps: look.pumps } : {}),
      ...(brix === null ? {} : { instrument: refractometer.id }),
      ...(isOdd ? { confirmed: ['/brix'] } : {}),
    },
  })
}

function levelFields({ level }: Look) {
  if ('litres' in level) return { fields: { volume: level.litres }, typed: { volume: `${level.litres} L` } }
  return { fields: { level: level.millimetres }, typed: { level: `${level.millimetres} mm` } }
}
