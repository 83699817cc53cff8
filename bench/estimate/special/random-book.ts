import type { BenchBook, BenchEntry, BenchSump } from '../book.ts'
import { type Chance, chanceOf } from '../simulate/random.ts'
import { dayMs, fluidOf, plainBook, startMs, sumpOf } from './plain-book.ts'

/** A book whose entries anybody might have written and nobody can have meant: any kind, figure and time, many at one instant. */
export function randomBook(seed: number): { book: BenchBook; atMs: number } {
  const chance = chanceOf(seed, 97)
  const fluids = [fluidOf('a', 1.2, 8), fluidOf('b', 2, 6)]
  const sumps = ['s1', 's2', 's3', 's4'].map((id, i): BenchSump => {
    const sump = sumpOf(id, chance.pick(['a', 'b']), volume(chance) + 1)
    // One without a plate, and one of which nothing but the name is known.
    if (i === 1) delete sump.fillVolume
    if (i === 2) return { id, name: id, kind: 'central' as const, fluid: 'a' }
    return sump
  })
  const count = Math.round(10 ** chance.between(0, 2.3))
  const instants: number[] = []
  const entries: BenchEntry[] = []
  for (let n = 0; n < count; n++) {
    const again = instants.length > 0 && chance.happens(0.3)
    const atMs = again ? chance.pick(instants) : anyTime(chance)
    instants.push(atMs)
    entries.push({
      id: idOf(n),
      at: new Date(atMs).toISOString(),
      ...anyEntry(chance, { atMs, n, sumps }),
    } as BenchEntry)
  }
  const workDays = chance.pick([[], [1, 2, 3, 4, 5], [1, 2, 3, 4, 5, 6, 7]])
  const bare = plainBook(fluids, sumps, [])
  const book = {
    ...bare,
    shop: { ...bare.shop, workDays, timeZone: chance.pick(['UTC', 'Europe/Berlin', 'America/Chicago']) },
    entries,
  }
  return { book, atMs: anyTime(chance) }
}

const idOf = (number: number): string => `00000000-0000-4000-8000-${number.toString(16).padStart(12, '0')}`

/** Half of all within half a year, the others up to thirty years away; to the minute. */
const anyTime = (chance: Chance) =>
  startMs +
  Math.round((chance.happens(0.5) ? chance.between(0, 180) : chance.between(-30, 30) * 365) * 1440) * (dayMs / 1440)

/** Litres from none to a million, each size as likely as another. */
const volume = (chance: Chance) => (chance.happens(0.1) ? 0 : Number((10 ** chance.between(-1, 6)).toPrecision(3)))

/** A level above the brim is refused at the door. */
const below = (chance: Chance, capacity: number | undefined) => Math.min(volume(chance), 1.05 * (capacity ?? 1e6))

interface Place {
  atMs: number
  n: number
  sumps: readonly BenchSump[]
}

function anyEntry(chance: Chance, { atMs, n, sumps }: Place): Record<string, unknown> {
  const { id: sump, capacity } = chance.pick(sumps)
  const strength = Number(chance.between(0, 20).toFixed(1))
  const maybe = (fields: Record<string, unknown>) =>
    Object.fromEntries(Object.entries(fields).filter(() => chance.happens(0.6)))
  const water = 'tap'
  const fluid = chance.pick(['a', 'b'])
  switch (chance.pick(kinds)) {
    case 'charge':
      return {
        kind: 'charge',
        sump,
        ...maybe({ volume: volume(chance), strength, water, fluid, heldBack: volume(chance) }),
      }
    case 'addition':
      return {
        kind: 'addition',
        sump,
        ...chance.pick([
          { volume: volume(chance) },
          { toMark: true },
          { concentrate: volume(chance) },
          { meter: { id: 'meter-s1', count: volume(chance) } },
        ]),
        ...maybe({ strength, water, fluid }),
      }
    case 'reading':
      return {
        kind: 'reading',
        sump,
        ...maybe({
          brix: anyClass(chance, () => Number(chance.pick([chance.between(0, 15), chance.between(0, 90)]).toFixed(1))),
          titration: anyClass(chance, () => Number(chance.between(0, 99).toFixed(1))),
          volume: below(chance, capacity),
          hardness: anyClass(chance, () => volume(chance)),
          chloride: anyClass(chance, () => volume(chance)),
          conductivity: volume(chance),
          machineHours: volume(chance),
          pumps: chance.pick(['running', 'stopped']),
          instrument: 'refractometer',
        }),
      }
    case 'drawoff':
      return { kind: 'drawoff', sump, volume: volume(chance) }
    case 'transfer':
      return {
        kind: 'transfer',
        sump,
        volume: volume(chance),
        to: { sump: chance.pick(['s1', 's2', 's4', 'nowhere']) },
      }
    case 'skim':
      return { kind: 'skim', sump }
    case 'job':
      return { kind: 'job', sump, material: 'steel' }
    case 'cleanout':
      return { kind: 'cleanout', sump, wasteVolume: volume(chance) }
    case 'idle':
      return { kind: 'idle', sump, ...fromTo(anyTime(chance), chance.pick([atMs, anyTime(chance)])) }
    case 'analysis':
      return { kind: 'analysis', about: { kind: 'water', id: 'tap' }, hardness: volume(chance) }
    case 'void':
      return { kind: 'void', entry: idOf(Math.floor(chance.between(0, n + 1))) }
    case 'setup':
      return {
        kind: 'setup',
        about: { kind: 'sump', id: sump },
        changes:
          capacity === undefined ? { minVolume: volume(chance) } : { fillVolume: capacity * chance.between(0.4, 1) },
      }
    case 'verdict':
      return {
        kind: 'verdict',
        sump,
        entries: [idOf(Math.floor(chance.between(0, n + 1)))],
        answer: chance.pick(['misread', 'stands', 'unlogged-water', 'instrument']),
      }
  }
}

const kinds = [
  'charge',
  'addition',
  'addition',
  'addition',
  'reading',
  'reading',
  'reading',
  'reading',
  'drawoff',
  'transfer',
  'skim',
  'job',
  'cleanout',
  'idle',
  'analysis',
  'void',
  'setup',
  'verdict',
] as const

const fromTo = (one: number, other: number) => ({
  from: new Date(Math.min(one, other)).toISOString(),
  to: new Date(Math.max(one, other)).toISOString(),
})

/** Figures, and classes as strips give them, some open at one end. */
function anyClass(chance: Chance, figure: () => number): unknown {
  const low = figure()
  if (chance.happens(0.6)) return low
  const high = figure()
  return chance.pick<unknown>([low < high ? { low, high } : low, { below: high }, { atLeast: low }])
}
