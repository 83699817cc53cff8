import type { BenchBook, BenchEntry, BenchSump, Value } from '../book.ts'
import { type Chance, chanceOf } from '../simulate/random.ts'
import { dayMs, fluidOf, plainBook, startMs, sumpOf } from '../special/plain-book.ts'

export interface Amount {
  sumps: number
  years: number
  /** Looks at a sump in a year, each a reading and a pour: two entries. */
  looksAYear: number
  seed?: number
}

type Unnumbered = { at: string; sump: string; kind: string } & Partial<BenchEntry>

const pads = [0, 70, 125, 180, 270, 360, 530]

/**
 * A large book to measure speed with: every sump loses, is read and filled to its mark as often as wanted. Plausible enough to cost
 * what a shop's book costs (noise, a refractometer off by the round, one reading in sixty slipped, one pour in forty not written),
 * too simple to say how good an estimate is.
 */
export function yearsOfEntries({ sumps: count, years, looksAYear, seed = 1 }: Amount): BenchBook {
  const fluids = [fluidOf('a', 1.1, 7.5), fluidOf('b', 1.6, 8)]
  const rounds = new Map<number, number>()
  const shopChance = chanceOf(seed, 41)
  const offsetOn = (day: number) => {
    const offset = rounds.get(day) ?? shopChance.normal(0.07) + (shopChance.happens(1 / 70) ? 0.5 : 0)
    rounds.set(day, offset)
    return offset
  }
  const sumps = Array.from(
    { length: count },
    (_, i): BenchSump => sumpOf(`s${i + 1}`, i % 4 === 3 ? 'b' : 'a', 100 + ((37 * i) % 300)),
  )
  const entries = sumps.flatMap((sump, i): Unnumbered[] => {
    const every = 365 / looksAYear
    const days = Array.from(
      { length: years * looksAYear },
      (_, look) => Math.floor(i % every) + Math.floor(look * every) + 1,
    )
    const { brixFactor, limits } = fluids.find(({ id }) => id === sump.fluid)!
    return written(sump, days, {
      target: limits.concentration.target,
      brixFactor,
      offsetOn,
      chance: chanceOf(seed, 42, i),
    })
  })
  const book = plainBook(fluids, sumps, [])
  return {
    ...book,
    shop: { ...book.shop, timeZone: 'Europe/Berlin', workDays: [1, 2, 3, 4, 5] },
    meters: [],
    entries: entries
      .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
      .map((entry, n): BenchEntry => ({ ...entry, id: idOf(n) })),
  }
}

interface Habits {
  target: number
  brixFactor: number
  offsetOn: (day: number) => number
  chance: Chance
}

function written(
  sump: BenchSump,
  days: readonly number[],
  { target, brixFactor, offsetOn, chance }: Habits,
): Unnumbered[] {
  const mark = sump.fillVolume! * chance.factor(0.08)
  const plate = sump.fillVolume!
  const hour = 6 + chance.between(0, 8)
  const at = (day: number, minute = 0) =>
    new Date(startMs + day * dayMs + Math.round(hour * 60 + minute) * 60_000).toISOString()
  const of = { sump: sump.id }
  const entries: Unnumbered[] = [
    {
      ...of,
      kind: 'charge',
      at: at(0),
      volume: Math.round(mark),
      strength: target,
      water: 'tap',
      fluid: sump.fluid,
      heldBack: 0,
    },
  ]
  let [litres, concentrate] = [mark, (mark * target) / 100]
  let last = 0
  for (const [look, day] of days.entries()) {
    const evaporated = mark * (day - last) * 0.012 * chance.factor(0.25)
    const carried = mark * (day - last) * 0.005 * chance.factor(0.4)
    const left = Math.max(0.3 * mark, litres - evaporated - carried)
    concentrate *= (left / litres) ** (carried / (evaporated + carried))
    litres = left
    last = day
    const percent = (100 * concentrate) / litres
    const slipped = chance.happens(1 / 60) ? chance.pick([10, 0.1, 1.4, 0.7]) : 1
    const brix = (percent / brixFactor + 0.3 + offsetOn(day) + chance.normal(0.1)) * slipped
    const reading = {
      ...of,
      kind: 'reading',
      at: at(day),
      brix: Number(Math.min(60, Math.max(0, brix)).toFixed(1)),
      instrument: 'refractometer',
    }
    const seen = Math.min(plate, Math.round((litres * plate) / mark + chance.normal(0.02 * plate)))
    entries.push({
      ...reading,
      volume: Math.max(0, seen),
      pumps: 'stopped',
      ...(look % 4 === 0 ? { hardness: stripOf(chance) } : {}),
    })
    const poured = Math.max(1, mark - litres)
    const strength = Number(Math.min(15, Math.max(0, (target * mark - 100 * concentrate) / poured)).toFixed(1))
    litres += poured
    concentrate += (poured * strength) / 100
    const amount = chance.happens(0.33) ? { toMark: true } : { volume: Math.round(poured * chance.factor(0.05)) }
    const isWritten = !chance.happens(1 / 40)
    // What nobody wrote is made up for by a note, so that a book has as many entries as wanted.
    entries.push(
      isWritten
        ? { ...of, kind: 'addition', at: at(day, 20), ...amount, strength, water: 'tap' }
        : { ...of, kind: 'observation', at: at(day, 20), signs: ['foam'] },
    )
  }
  return entries
}

function stripOf(chance: Chance): Value {
  const i = Math.floor(chance.between(1, pads.length - 1))
  return { low: pads[i]!, high: pads[i + 1]! }
}

const idOf = (number: number): string => `00000000-0000-4000-8000-${number.toString(16).padStart(12, '0')}`
