import type { BenchBook, BenchEntry, BenchFluid, BenchSump } from '../book.ts'

export const dayMs = 86_400_000
/** A Monday, midnight in UTC, where all these shops stand. */
export const startMs = Date.UTC(2025, 2, 3)
export const timeAt = (day: number, hour = 0, minute = 0): number =>
  startMs + day * dayMs + (hour * 60 + minute) * 60_000

export type Written = Omit<BenchEntry, 'id' | 'at'> & { atMs: number }

export const fluidOf = (id: string, brixFactor: number, target: number): BenchFluid => ({
  id,
  name: `Fluid ${id}`,
  brixFactor,
  maxMixStrength: 20,
  limits: { concentration: { low: target - 1.5, target, high: target + 1.5 } },
})

export const sumpOf = (id: string, fluid: string, mark: number): BenchSump => ({
  id,
  name: `Mill ${id}`,
  kind: 'stand-alone',
  fluid,
  capacity: 1.25 * mark,
  fillVolume: mark,
  minVolume: 0.4 * mark,
})

/** A book whose machines run every day of the week, with one refractometer and tap water of 120 mg/L. */
export function plainBook(fluids: BenchFluid[], sumps: BenchSump[], written: readonly Written[]): BenchBook {
  return {
    format: 'sumpbook-book/1',
    shop: {
      name: 'A special case',
      timeZone: 'UTC',
      units: 'metric',
      currency: 'EUR',
      workDays: [1, 2, 3, 4, 5, 6, 7],
      shutdowns: [],
    },
    fluids,
    waters: [{ id: 'tap', name: 'Tap', kind: 'tap', hardness: 120 }],
    sumps,
    instruments: [{ id: 'refractometer', name: 'Refractometer', kind: 'refractometer', resolution: 0.1 }],
    meters: sumps.map(({ id }) => ({ id: `meter-${id}`, name: `Meter ${id}`, litresPerCount: 1, sump: id })),
    entries: written
      .map(
        ({ atMs, ...fields }, i): BenchEntry =>
          ({ id: idOf(i), at: new Date(atMs).toISOString(), ...fields }) as BenchEntry,
      )
      .sort((one, other) => Date.parse(one.at) - Date.parse(other.at)),
  }
}

const idOf = (number: number): string => `00000000-0000-4000-8000-${number.toString(16).padStart(12, '0')}`
