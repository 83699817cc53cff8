import {
  type Advice,
  advise,
  type Figure,
  type Reader,
  type SumpEvent,
  say,
  sayStanding,
  standingAfter,
  trueMarks,
  volumeAt,
  volumeBesideMark,
  volumeToPour,
} from '@sumpbook/fluid'
import type { Entry, SumpNow } from '../api/types.ts'
import { weighedWith } from '../round/expected.ts'
import { volumeOf } from '../round/read-level.ts'
import { strengthOf } from '../round/read-strength.ts'

/** Who reads it, and when by this device's clock, ms since 1970. */
export interface AskedHere {
  reader: Reader
  now: number
}

/**
 * A sump as the book last had it, with what was written on this device since and is not in that answer: readings weighed as on the
 * round, pours and draw-offs by the balance of concentrate. What leaves unseen meanwhile is not in it; the book works it all
 * out anew once it has the entries. Nothing is said of the days ahead.
 *
 * @param entries about any sump, in the order of writing
 */
export function withWaiting<T extends SumpNow>(sump: T, entries: readonly Entry[], { reader, now }: AskedHere): T {
  const withdrawn = new Set(entries.flatMap((entry) => (entry.kind === 'void' ? [entry.entry] : [])))
  const mine = entries.filter((entry) => entry.sump === sump.sump && !withdrawn.has(entry.id))
  const counted = mine.reduce<SumpNow>((before, entry) => after(before, entry, now), sump)
  if (counted === sump) return sump
  const marks = trueMarks(sump.bench, sump.mark)
  const { concentration, volume } = counted
  const beside = volume === null ? null : volumeBesideMark(volume, sump.mark)
  const sentence = sayStanding({ concentration, volume: beside, mark: marks.fillVolume }, reader)
  const standing = { ...sump, ...counted, sentence, ahead: { ...sump.ahead, drift: '', crossing: '' } }
  if (!isAdvised(standing) || sump.doubts.length > 0) return standing
  const toPour = volume === null ? null : volumeToPour(volume, sump.mark, marks)
  const advice = advise({ volume: toPour, concentration }, marks, reader)
  return {
    ...standing,
    ...advice,
    action: advice.recipe.action,
    why: `${sentence} ${say('What waits on this device is counted.')}`,
  }
}

/** The list of the day with what waits: what wants nothing more is in order. */
export function todayWithWaiting<Item extends SumpNow & Advice, T extends { items: Item[]; calm: SumpNow[] }>(
  today: T,
  entries: readonly Entry[],
  asked: AskedHere,
): T {
  const items = today.items.map((item) => withWaiting(item, entries, asked))
  const isDone = (item: Item, n: number) => item !== today.items[n] && item.recipe.action === 'none'
  return {
    ...today,
    items: items.filter((item, n) => !isDone(item, n)),
    calm: [...items.filter(isDone), ...today.calm.map((sump) => withWaiting(sump, entries, asked))],
  }
}

const isAdvised = (sump: SumpNow): sump is SumpNow & Advice => 'recipe' in sump

function after(sump: SumpNow, entry: Entry, now: number): SumpNow {
  if (entry.kind === 'reading') return afterReading(sump, entry, now)
  const event = eventOf(entry, trueMarks(sump.bench, sump.mark).fillVolume)
  if (event === null || sump.bench.class === 'straight-oil') return sump
  const { concentration, volume } = standingAfter([stands(sump), event])
  return changed(sump, { concentration, volume })
}

const stands = ({ concentration, volume }: Pick<SumpNow, 'concentration' | 'volume'>): SumpEvent => ({
  kind: 'reading',
  concentration,
  volume,
})

function eventOf(entry: Entry, mark: number | null): SumpEvent | null {
  switch (entry.kind) {
    case 'addition': {
      const { volume = null, strength = null, concentrate, toMark = false, additive } = entry
      if (concentrate !== undefined) return { kind: 'addition', volume: concentrate, strength: 100, toMark: null }
      if (volume === null && !toMark && additive !== undefined) return null
      return { kind: 'addition', volume, strength, toMark: toMark ? mark : null }
    }
    case 'charge': {
      const { volume = null, strength = null, heldBack = 0 } = entry
      return { kind: 'charge', volume, strength, heldBack }
    }
    case 'drawoff':
    case 'transfer':
      return { kind: 'drawoff', volume: entry.volume ?? null }
    default:
      return null
  }
}

type Reading = Entry & { kind: 'reading' }

function afterReading(sump: SumpNow, reading: Reading, now: number): SumpNow {
  const litres = litresOf(reading, sump)
  const brix = typeof reading.brix === 'number' ? reading.brix : null
  const strength = brix === null ? null : strengthOf(brix, sump.bench)
  const level = litres === null ? null : volumeOf(litres, { pumps: reading.pumps ?? 'stopped' }, sump)
  const seen = strength !== null && 'mean' in strength ? strength : null
  if (level === null && seen === null) return sump
  const weighed = brix === null ? null : weighedWith(brix, sump, now)
  const alone = standingAfter([stands(sump), { kind: 'reading', concentration: seen, volume: level }])
  return changed(sump, weighed?.outcome === 'fits' ? { ...alone, concentration: weighed.concentration } : alone)
}

function litresOf({ volume, level }: Reading, { bench }: SumpNow): number | null {
  if (typeof volume === 'number') return volume
  if (volume !== undefined && 'low' in volume) return (volume.low + volume.high) / 2
  if (typeof level !== 'number' || bench.dipTable === null) return null
  const at = volumeAt(bench.dipTable, level)
  return at.outcome === 'outside' ? null : at.volume
}

/** What was expected of the next reading, and of the days ahead, held for where it stood before. */
const changed = (sump: SumpNow, figures: { concentration: Figure | null; volume: Figure | null }): SumpNow => ({
  ...sump,
  ...figures,
  expected: null,
  inAWeek: null,
  crossing: null,
})
