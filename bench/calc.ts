import { calculations, runCalculation } from '../packages/book/src/calc/index.ts'
import { digits, median } from './machine.ts'

/** An input for every calculation, of the size a person types. */
const inputs: Record<string, unknown> = {
  concentration: { brix: 4.2, factor: 1.6 },
  ratio: { waterParts: 20 },
  factor: { mixes: [2, 4, 6, 8, 10].map((percent) => ({ percent, brix: percent / 1.6 + (percent % 3) / 20 })) },
  inverse: { calibration: [0, 1, 2, 3, 4, 5].map((x) => ({ x, y: 3 + 2 * x + (x % 2) / 10 })), y0: 8 },
  'top-up': { volume: 150, concentration: 6.5, fillVolume: 200, target: 6, mixerStrengths: [2, 4, 6, 8] },
  'tracer-volume': { before: 4, after: 6, added: 8.5, sd: 0.1 },
  vessel: { shapes: [{ kind: 'horizontal-cylinder', diameter: 1000, length: 2000 }], level: 300 },
  balance: {
    volume: 200,
    evaporation: 6,
    carryOff: 2,
    concentration: 8,
    target: 8,
    hardness: 200,
    water: { hardness: 200 },
  },
  hardness: { value: 10, unit: 'gpg' },
  blend: {
    waters: [
      { id: 'tap', hardness: 260, chloride: 60, sulfate: 50, nitrate: 70, cost: 0.002 },
      { id: 'di', hardness: 5, chloride: 1, sulfate: 1, nitrate: 1, cost: 0.01 },
    ],
    limits: { hardness: { low: 80, high: 125 }, nitrate: { high: 50 } },
    volume: 1000,
  },
  premix: {
    needs: [3, 4, 5, 8, 9].map((strength, i) => ({ sump: `s${i}`, volume: 20 + i, strength, sumpVolume: 200 })),
    strengths: 2,
  },
  rinse: { heldBack: 10, rinseVolume: 190, rinses: 3, concentration: 8 },
  treatment: {
    demand: 300,
    tap: { tds: 400, hardness: 250, costPerLitre: 0.002 },
    unit: { litresPerDay: 600, price: 2000, recovery: 0.5, rejection: 0.97, upkeepPerYear: 200 },
  },
  'control-chart': { values: Array.from({ length: 60 }, (_, i) => 9 + (i % 7) / 20), kind: 'ewma' },
}

/** Milliseconds of each calculation by name, warm, in process: the median of 200 runs; and premix for a whole plant. */
export function benchCalc() {
  const each = Object.fromEntries(
    [...calculations].map(([name, calculation]) => [
      name,
      digits(timed(200, () => runCalculation(calculation, inputs[name]))),
    ]),
  )
  const needs = Array.from({ length: 500 }, (_, i) => ({
    sump: `s${i}`,
    volume: 10 + ((i * 37) % 90),
    strength: ((i * 61) % 200) / 10,
    sumpVolume: 150 + ((i * 13) % 400),
  }))
  const premix = calculations.get('premix')!
  return {
    millisecondsEach: each,
    limitMillisecondsEach: 1,
    slowest: Math.max(...Object.values(each)),
    premix500By5Milliseconds: digits(timed(20, () => runCalculation(premix, { needs, strengths: 5 }))),
    limitPremixMilliseconds: 50,
  }
}

function timed(runs: number, work: () => unknown): number {
  for (let i = 0; i < 50; i++) work()
  const times = Array.from({ length: runs }, () => {
    const from = performance.now()
    work()
    return performance.now() - from
  })
  return median(times)
}
