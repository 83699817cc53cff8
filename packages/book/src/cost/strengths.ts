import { type Band, strengthDays } from '@sumpbook/fluid'
import { rememberCharge } from '../estimate/pour-events.ts'
import { copyTranslation } from '../estimate/translation.ts'
import type { Reading } from '../schema/entries/index.ts'
import type { Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import { strengthRead } from '../today/strength-read.ts'
import type { BandDays } from './answer-types.ts'
import type { Recorded, SpanRecords } from './records.ts'

/** A strength that was read, with its doubt. */
export interface StrengthRead {
  entry: string
  at: number
  concentration: number
  sd: number
}

/** How a verdict says that a reading was wrong. */
const wrong = new Set(['misread', 'wrong-sump'])

/**
 * What was read of each sump's strength in a span and the week before it, by the scale of its day and the fluid that was in; readings that a verdict
 * called wrong are left out.
 */
export function strengthsOf({ before, entries, history, memory: kept }: SpanRecords): Map<string, StrengthRead[]> {
  const memory = copyTranslation(kept)
  const wrongly = new Set(
    entries.flatMap(({ entry }) =>
      entry.kind === 'verdict' && wrong.has(entry.answer ?? '')
        ? (entry.entries ?? []).map((id) => id.toLowerCase())
        : [],
    ),
  )
  const read = new Map<string, StrengthRead[]>()
  const take = ({ id, day, at }: Recorded, entry: Reading) => {
    if (wrongly.has(id)) return
    const then = history.at(at)
    const charge = memory.sumps.get(entry.sump)?.charge ?? null
    const fluid = charge?.fluid ?? then.sump.get(entry.sump)?.fluid ?? ''
    const found = strengthRead(entry, then.fluid.get(fluid), then, charge?.lot ?? null)
    if (found === null) return
    read.set(entry.sump, [
      ...(read.get(entry.sump) ?? []),
      { entry: id, at: day, concentration: found.mean, sd: found.sd },
    ])
  }
  for (const recorded of [...before, ...entries]) {
    const { entry, at } = recorded
    if (entry.kind === 'reading') take(recorded, entry)
    if (entry.kind === 'charge') rememberCharge(entry, history.at(at), memory)
  }
  return read
}

/** The band and target a sump is kept by: its own before its fluid's; null where nobody said. */
export function aimOf(sump: Sump, things: Things): { band: Band | null; target: number | null } {
  const fluid = things.fluid.get(sump.fluid)
  if (fluid?.class === 'straight-oil') return { band: null, target: null }
  const { low, target, high } = { ...fluid?.limits?.concentration, ...sump.limits?.concentration }
  const band = low === undefined && high === undefined ? null : { low: low ?? 0, high: high ?? 100 }
  const middle = low !== undefined && high !== undefined ? (low + high) / 2 : null
  return { band, target: target ?? middle }
}

/** How many days a sump stood in and out of its band. */
export function bandDays(
  readings: readonly StrengthRead[],
  band: Band | null,
  { firstDay, days }: { firstDay: number; days: number },
): BandDays {
  const counted: BandDays = { inBand: 0, under: 0, above: 0, unknown: 0 }
  if (band === null) return { ...counted, unknown: days }
  for (const strength of strengthDays(readings, { from: firstDay, days })) {
    if (strength === null) counted.unknown += 1
    else if (strength < band.low) counted.under += 1
    else if (strength > band.high) counted.above += 1
    else counted.inBand += 1
  }
  return counted
}
