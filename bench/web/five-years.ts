import { randomUUID } from 'node:crypto'

const day = 86_400_000

/** A book of one sump with a reading on each working day of five years, a pour after each third and a fresh charge each half year; invented. */
export function fiveYears(now: Date) {
  const first = now.getTime() - 5 * 365 * day
  const at = (ms: number) => new Date(ms).toISOString()
  const entries: Record<string, unknown>[] = []
  const write = (ms: number, entry: Record<string, unknown>) =>
    entries.push({ id: randomUUID(), at: at(ms), sump: 's1', ...entry })
  for (let n = 0; n < 5 * 365 - 1; n++) {
    const morning = first + n * day
    if (n % 182 === 0) write(morning, { kind: 'charge', volume: 200, strength: 7, water: 'soft' })
    else if (n % 7 < 5) {
      const brix = 4.4 + 0.5 * Math.sin(n / 9) + 0.1 * ((n * 7) % 5)
      write(morning, { kind: 'reading', brix: Number(brix.toFixed(1)), volume: 180 + ((n * 13) % 20) })
      if (n % 3 === 0) write(morning + 600_000, { kind: 'addition', volume: 14, strength: 5, water: 'soft' })
    }
  }
  return {
    format: 'sumpbook-book/1',
    shop: { name: 'Five years', timeZone: 'Europe/Berlin', units: 'metric' },
    fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
    waters: [{ id: 'soft', name: 'Town water', kind: 'tap', hardness: 120 }],
    sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
    entries,
  }
}
