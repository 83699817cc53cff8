import type { BenchEntry, Value } from '../book.ts'
import { instantOf, stepsPerDay } from './clock.ts'
import { stripPads } from './equipment.ts'
import type { Chance } from './random.ts'
import type { Round } from './round.ts'
import { brixOf, type SimSump, seenVolume } from './sump.ts'
import { concentrationOf, hardnessOf } from './tank.ts'
import { round } from './traits.ts'

/** Looks at one sump of a round and writes the reading. */
export function readSump(sump: SimSump, at: Round, minute: number): BenchEntry | null {
  const { shop, step } = at
  const { chance, traits, losses, tank } = sump
  const day = Math.floor(step / stepsPerDay)
  if (chance.happens(0.05)) return null
  const instrument = shop.equipment.refractometers[at.instrument]!
  const noise = chance.normal(0.07 + 0.012 * brixOf(sump, shop.equipment))
  const shown = Math.max(
    0,
    round(brixOf(sump, shop.equipment) + instrument.zero + at.offset + noise, instrument.resolution),
  )
  const { written, error } = slip(shown, chance)
  const fields: Omit<BenchEntry, 'id' | 'at'> = {
    kind: 'reading',
    sump: sump.id,
    brix: written,
    instrument: instrument.id,
  }
  if (losses.running[step] === 1) fields.pumps = 'running'
  else if (chance.happens(0.5)) fields.pumps = 'stopped'
  if (traits.looksAtLevel) Object.assign(fields, levelOf(sump, step))
  if (traits.titrates && day >= sump.nextTitrationDay) {
    sump.nextTitrationDay = day + 26
    const bias = traits.titrationBias + traits.titrationBiasADay * day
    fields.titration = Math.max(0, round(concentrationOf(tank) + bias + chance.normal(0.2), 0.1))
  }
  if (day >= sump.nextStripDay) {
    sump.nextStripDay = day + traits.stripEveryDays
    fields.hardness = stripClass(hardnessOf(tank) * chance.factor(0.13))
    fields.ph = round(9.1 + chance.normal(0.15), 0.1)
  }
  const entry = shop.journal.write(step, minute, fields)
  sump.lastShown = shown * shop.equipment.bookFactors[sump.product]!
  const atMs = instantOf(shop.clock, step) + minute * 60_000
  if (error !== 0) {
    shop.journal.labels.wrongReadings.push({ kind: 'misread', sump: sump.id, entry: entry.id, atMs, error })
  }
  return entry
}

/** One reading in seventy is typed or read wrongly: the point slips, figures change places, a line of the scale is miscounted. */
function slip(shown: number, chance: Chance): { written: number; error: number } {
  if (!chance.happens(1 / 70)) return { written: shown, error: 0 }
  const [whole = '0', tenths = '0'] = shown.toFixed(1).split('.')
  const wrong = chance.pick([
    shown * 10,
    shown / 10,
    Number(`${tenths}.${whole.slice(-1)}`),
    shown + chance.pick([-2, -1, 1, 2, 5]),
    shown + chance.pick([-2, -1, 1, 2, 5]),
  ])
  const written = round(Math.min(Math.max(wrong, 0), 95), 0.01)
  // Less than half a degree off is no slip that anybody could tell from noise.
  return Math.abs(written - shown) < 0.5 ? { written: shown, error: 0 } : { written, error: written - shown }
}

function levelOf(sump: SimSump, step: number): { level?: number; volume?: number } {
  const seen = seenVolume(sump, step) * sump.chance.factor(0.02)
  const litres = Math.min(seen, sump.traits.plateVolume * 1.25)
  if (sump.inBook.dipTable !== undefined) {
    return { level: Math.min(500, round((litres / sump.inBook.dipTable[1]![1]) * 500, 5)) }
  }
  return { volume: round(litres, sump.traits.plateVolume > 1000 ? 50 : 5) }
}

/** The class between two pads of a strip. */
export function stripClass(value: number): Value {
  const above = stripPads.findIndex((pad) => pad > value)
  if (above === -1) return { atLeast: stripPads.at(-1)! }
  return above === 0 ? { below: stripPads[1]! } : { low: stripPads[above - 1]!, high: stripPads[above]! }
}
