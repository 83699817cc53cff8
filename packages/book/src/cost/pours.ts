import { amountOf, textOf } from '../estimate/amounts.ts'
import { additionOf, chargeOf, fluidIn, rememberCharge } from '../estimate/pour-events.ts'
import { readingOf } from '../estimate/reading-events.ts'
import { copyTranslation } from '../estimate/translation.ts'
import type { Recorded, SpanRecords } from './records.ts'

/** How the litres of a pour are known: written down, reckoned from the level that was read before it, or not. */
export type Measure = 'recorded' | 'by-level' | 'unmeasured'

/** One pour into a sump. Litres; null where nobody knows. */
export interface PourLine {
  entry: string
  at: string
  day: number
  sump: string
  kind: 'charge' | 'addition'
  fluid: string
  lot: string | null
  water: string | null
  measure: Measure
  mix: number | null
  concentrate: number | null
  waterLitres: number | null
}

/** A level counts for a fill that follows it within so many hours. */
const levelHours = 12

/**
 * Every pour of a span as it was written, amounts by meter counts included. A fill to the mark that nobody measured is the mark less the level that was
 * read before it on the same visit; without one its litres are not known.
 */
export function poursOf({ entries, history, memory: kept }: SpanRecords): PourLine[] {
  const memory = copyTranslation(kept)
  const seen = new Map<string, { ms: number; volume: number }>()
  const pours: PourLine[] = []
  for (const recorded of entries) {
    const { entry, at } = recorded
    const then = history.at(at)
    const placed = { id: recorded.id, entry, ms: recorded.ms, at: recorded.day }
    if (entry.kind === 'reading') {
      const sump = then.sump.get(entry.sump)
      const volume = readingOf(entry, placed, then, memory)?.seen
      if (typeof volume === 'number' && sump !== undefined) {
        const out = entry.pumps === 'running' ? (sump.holdUp ?? 0) : 0
        seen.set(entry.sump, { ms: recorded.ms, volume: volume + out })
      }
    } else if (entry.kind === 'charge') {
      const { volume, strength, fluid } = chargeOf(entry, placed, then, memory)
      pours.push({
        ...lineOf(recorded, entry.sump),
        kind: 'charge',
        fluid,
        lot: textOf(entry.lot),
        water: textOf(entry.water),
        ...amounts(volume, strength, 'recorded'),
      })
      rememberCharge(entry, then, memory)
      seen.delete(entry.sump)
    } else if (entry.kind === 'addition') {
      const added = additionOf(entry, placed, then, memory)
      if (added === null) continue
      const level = seen.get(entry.sump)
      const mark = then.sump.get(entry.sump)?.fillVolume
      const isFresh = level !== undefined && recorded.ms - level.ms <= levelHours * 3_600_000
      const byLevel =
        added.amount === 'to-mark' && isFresh && mark !== undefined ? Math.max(0, mark - level.volume) : null
      const litres = typeof added.amount === 'number' ? added.amount : byLevel
      const measure = typeof added.amount === 'number' ? 'recorded' : 'by-level'
      const fluid = textOf(entry.fluid) ?? fluidIn(entry.sump, then, memory)
      // A straight oil is poured as it comes.
      const strength = added.strength ?? (then.fluid.get(fluid)?.class === 'straight-oil' ? 100 : null)
      const alone = entry.volume === undefined && added.strength === 100 ? amountOf(entry.concentrate) : null
      pours.push({
        ...lineOf(recorded, entry.sump),
        kind: 'addition',
        fluid,
        lot: textOf(entry.lot),
        water: textOf(entry.water),
        ...amounts(litres, strength, measure, alone),
      })
      seen.delete(entry.sump)
    } else if (entry.kind === 'drawoff' || entry.kind === 'transfer') {
      if (typeof entry.sump === 'string') seen.delete(entry.sump)
    }
  }
  return pours
}

const lineOf = ({ id, at, day }: Recorded, sump: string) => ({ entry: id, at, day, sump })

function amounts(mix: number | null, strength: number | null, measure: Measure, alone: number | null = null) {
  if (mix === null) return { measure: 'unmeasured' as const, mix, concentrate: null, waterLitres: null }
  const concentrate = strength === null ? null : (alone ?? (mix * strength) / 100)
  return { measure, mix, concentrate, waterLitres: concentrate === null ? null : mix - concentrate }
}
