import { exampleInputs } from '../packages/book/src/calc/examples.ts'
import { calculations, runCalculation } from '../packages/book/src/calc/index.ts'
import { digits, median } from './machine.ts'

/** The largest blend that is taken: twelve waters, priced. */
const twelveWaters = {
  waters: Array.from({ length: 12 }, (_, i) => ({
    id: `w${i}`,
    hardness: 20 + ((i * 53) % 300),
    chloride: 5 + ((i * 31) % 90),
    nitrate: 2 + ((i * 17) % 70),
    cost: 0.001 * (1 + ((i * 7) % 12)),
  })),
  limits: { hardness: { low: 80, high: 125 }, chloride: { high: 50 }, nitrate: { high: 40 } },
}

/** Milliseconds of each calculation by name, warm, in process: the median of 200 runs; and premix for a whole plant. */
export function benchCalc() {
  const each = Object.fromEntries(
    [...calculations].map(([name, calculation]) => [
      name,
      digits(timed(200, () => runCalculation(calculation, exampleInputs[name]))),
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
    blendOf12Milliseconds: digits(timed(50, () => runCalculation(calculations.get('blend')!, twelveWaters))),
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
