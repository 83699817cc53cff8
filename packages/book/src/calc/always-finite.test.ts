import fc from 'fast-check'
import { expect, test } from 'vitest'
import { BookError } from '../errors.ts'
import { calculations, runCalculation } from './index.ts'

/** A good input for every calculation; the property changes its figures. */
const inputs: Record<string, unknown> = {
  concentration: { brix: 4.2, factor: 1.6, waterBrix: 0.2, resolution: 0.1, factorSd: 0.05, diluted: 2 },
  ratio: { waterParts: 20 },
  factor: { mixes: [2, 4, 6, 8].map((percent) => ({ percent, brix: percent / 1.6 })) },
  inverse: { calibration: [0, 1, 2, 3].map((x) => ({ x, y: 3 + 2 * x + (x % 2) / 10 })), y0: [8, 8.1], level: 0.9 },
  'top-up': {
    volume: 150,
    concentration: 6.5,
    fillVolume: 200,
    target: 6,
    band: { low: 5, high: 7 },
    maxStrength: 15,
    minStrength: 1,
    holdUp: 10,
    pumps: 'running',
    capacity: 240,
    minVolume: 60,
    concentrationSd: 0.2,
    volumeSd: 5,
    hardness: 300,
    waters: [{ id: 'w', hardness: 100 }],
    mixerStrengths: [2, 8],
    premixes: [{ id: 'p', strength: 5, volume: 40 }],
    container: { name: 'bucket', capacity: 12, graduation: 1 },
  },
  'tracer-volume': { before: 4, after: 6, added: 8.5, strength: 100, sd: 0.1 },
  vessel: {
    shapes: [
      { kind: 'horizontal-cylinder', diameter: 1000, length: 2000 },
      { kind: 'box', length: 500, width: 400, height: 300, from: 1000 },
    ],
    displaced: 20,
    level: 300,
  },
  balance: {
    volume: 200,
    evaporation: 6,
    carryOff: 2,
    concentration: 8,
    target: 8,
    hardness: 200,
    water: { hardness: 200 },
    strength: 2,
    depletion: 0.01,
    days: [0, 30],
    limit: { hardness: 400 },
  },
  hardness: { value: 10, unit: 'gpg' },
  blend: {
    waters: [
      { id: 'tap', hardness: 260, chloride: 60, sulfate: 50, nitrate: 70, cost: 0.002 },
      { id: 'di', hardness: 5, chloride: 1, sulfate: 1, nitrate: 1, cost: 0.01 },
    ],
    limits: { hardness: { low: 80, high: 125 }, nitrate: { high: 50 } },
    volume: 100,
  },
  premix: {
    needs: [3, 4, 9].map((strength, i) => ({ sump: `s${i}`, volume: 20, strength, sumpVolume: 200 })),
    strengths: 2,
  },
  rinse: { heldBack: 10, rinseVolume: 190, rinses: 3, concentration: 8 },
  treatment: {
    demand: 300,
    peak: 1.5,
    tap: { tds: 400, hardness: 250, costPerLitre: 0.002 },
    unit: { litresPerDay: 600, price: 2000, recovery: 0.5, rejection: 0.97, upkeepPerYear: 200 },
    polisher: { resinLitres: 20, capacityPerLitre: 30, price: 100 },
    fluidSaving: 1500,
    years: 5,
  },
  'control-chart': { values: [9, 9.1, 8.9, 9.4, 9], kind: 'ewma', lambda: 0.2, width: 3, target: 9, sd: 0.2 },
}

const wild = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 100, 1e-300, 1e-12, 1e12, 1e300, -1e300, 0.5),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
)

test.each([...calculations.keys()])(
  '%s: whatever the figures, an answer of finite figures or a refusal by field',
  (name) => {
    const calculation = calculations.get(name)!
    const good = inputs[name]
    expect(unfinite(runCalculation(calculation, good).output)).toEqual([])
    const places = numbersIn(good)
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(places.length - 1), wild), { minLength: 1, maxLength: 3 }), (changes) => {
        const input = structuredClone(good)
        for (const [place, value] of changes) setAt(input, places[place]!, value)
        try {
          const { output } = runCalculation(calculation, input)
          expect(unfinite(output)).toEqual([])
        } catch (error) {
          if (!(error instanceof BookError)) throw error
          expect(error.faults.length).toBeGreaterThan(0)
        }
      }),
      { numRuns: 3000 },
    )
  },
)

type Path = (string | number)[]

function numbersIn(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, [...path, key]))
}

function setAt(value: unknown, path: Path, number: number): void {
  const [last, ...before] = path.toReversed()
  const parent = before.toReversed().reduce((inner, key) => (inner as Record<string, unknown>)[key], value)
  ;(parent as Record<string, unknown>)[last!] = number
}

/** Places in an answer that hold NaN or infinity. */
function unfinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => unfinite(inner, `${path}/${key}`))
}
