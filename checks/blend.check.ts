/**
 * Blends of waters, and the solver of linear programs under them.
 *
 * Programs in data/ (their sources stand there): optima as read in HiGHS `check/CMakeLists.txt` (afiro, adlittle, avgas, blending) and the Netlib
 * readme (afiro −464.75314286, adlittle 225494.96316, blend −30.812149846, the last from memory), and solved anew by HiGHS 1.15.3 in each check;
 * tolerance 1e-8 of the value. Programs stated here: PuLP's documentation "A blending problem" (Whiskas; read: 96 cents; full problem 0.52 at 60 %
 * beef and 40 % gel), H. A. Taha, Operations Research (feed mix: statement read, 437.64 from memory; paints: 21), F. S. Hillier, G. J. Lieberman
 * (glass: 36, from memory), HiGHS `check/SpecialLps.h` (31.2 and 32, 2850; read), the README of highs-js (1100; read).
 *
 * Blends: PuLP's cat food is a blend under limits like a water's, one low and some high, and is solved by `blendWaters` itself. Nitrate: computed
 * here, 1 − 50/70 of demineralised water, for the 50 mg/L of TRGS 611. Random blends: cost and feasibility by HiGHS; tolerance 1e-7 of the largest
 * cost.
 */
import { expect, test } from 'vitest'
import {
  type BlendWater,
  blendWaters,
  type MineralLimits,
  makeUpLimits,
  minerals,
} from '../packages/fluid/src/index.ts'
import { type LinearProgram, readMps, solveHere, solverByHighs } from './linear-program.ts'

const byHighs = await solverByHighs()

test.each([
  ['afiro.mps', 27, 32, -464.75314285714285],
  ['adlittle.mps', 56, 97, 225494.96316238024],
  ['blend.mps', 74, 83, -30.812149845828216],
  ['avgas.mps', 10, 8, -7.75],
  ['blending.mps', 2, 2, -3200],
])('%s, %d rows and %d columns, has its published optimum', (file, rows, columns, optimum) => {
  const program = readMps(file)
  expect(program.rows).toHaveLength(rows)
  expect(program.columns).toHaveLength(columns)
  expect(Math.abs(solveHere(program)! / optimum - 1)).toBeLessThan(1e-8)
  expect(Math.abs(byHighs(program)! / optimum - 1)).toBeLessThan(1e-8)
})

/** Rows as [coefficients, low, high], null for an open end. */
function program(
  direction: LinearProgram['direction'],
  costs: number[],
  rows: [number[], number | null, number | null][],
  integers: number[] = [],
): LinearProgram {
  return {
    direction,
    rows: rows.map(([, low, high], index) => ({
      name: String(index),
      bound: { ...(low === null ? {} : { low }), ...(high === null ? {} : { high }) },
    })),
    columns: costs.map((cost, column) => ({
      name: String(column),
      cost,
      entries: rows.map(([values], row) => ({ row: String(row), value: values[column]! })),
      integer: integers.includes(column),
    })),
  }
}

const stated: [string, LinearProgram, number, number][] = [
  [
    'feed mix of corn and soy',
    program(
      'minimize',
      [0.3, 0.9],
      [
        [[1, 1], 800, null],
        [[0.21, -0.3], null, 0],
        [[0.03, -0.01], 0, null],
      ],
    ),
    437.647,
    3,
  ],
  [
    'two paints',
    program(
      'maximize',
      [5, 4],
      [
        [[6, 4], null, 24],
        [[1, 2], null, 6],
        [[-1, 1], null, 1],
        [[0, 1], null, 2],
      ],
    ),
    21,
    8,
  ],
  [
    'glass doors and windows',
    program(
      'maximize',
      [3, 5],
      [
        [[1, 0], null, 4],
        [[0, 2], null, 12],
        [[3, 2], null, 18],
      ],
    ),
    36,
    8,
  ],
  [
    'distillation',
    program(
      'minimize',
      [8, 10],
      [
        [[2, 2], 7, null],
        [[3, 4], 12, null],
        [[2, 1], 6, null],
      ],
    ),
    31.2,
    8,
  ],
  [
    'distillation in whole numbers',
    program(
      'minimize',
      [8, 10],
      [
        [[2, 2], 7, null],
        [[3, 4], 12, null],
        [[2, 1], 6, null],
      ],
      [0, 1],
    ),
    32,
    8,
  ],
  [
    'blending of two ores',
    program(
      'minimize',
      [-8, -10],
      [
        [[0.3, 0.5], null, 120],
        [[0.7, 0.5], null, 210],
      ],
    ),
    -2850,
    8,
  ],
  [
    'chairs and tables',
    program(
      'maximize',
      [30, 50],
      [
        [[1, 2], null, 40],
        [[2, 1], null, 50],
      ],
      [0, 1],
    ),
    1100,
    8,
  ],
]

test.each(stated)('%s', (_, program, optimum, digits) => {
  expect(solveHere(program)).toBeCloseTo(optimum, digits)
  expect(byHighs(program)).toBeCloseTo(optimum, Math.min(digits, 6))
})

// Percent of a can: what is wanted at least stands as hardness, what is allowed at most as chloride and sulfate.
const food = (id: string, cost: number, [fat, fibre, salt]: [number, number, number]): BlendWater => ({
  id,
  cost,
  hardness: 100 * fat,
  chloride: 100 * fibre,
  sulfate: 100 * salt,
})
const chicken = food('chicken', 0.013, [0.08, 0.001, 0.002])
const beef = food('beef', 0.008, [0.1, 0.005, 0.005])
const foods = [
  chicken,
  beef,
  food('mutton', 0.01, [0.11, 0.003, 0.007]),
  food('rice', 0.002, [0.01, 0.1, 0.002]),
  food('wheat', 0.005, [0.01, 0.15, 0.008]),
  food('gel', 0.001, [0, 0, 0]),
]
const can: MineralLimits = { hardness: { low: 6 }, chloride: { high: 2 }, sulfate: { high: 0.4 } }

test('a can of chicken and beef costs 96 cents: a third chicken, two thirds beef', () => {
  const blend = blendWaters({ waters: [chicken, beef], limits: can, volume: 100 })
  if (blend.outcome !== 'blend') throw new Error(blend.outcome)
  expect(blend.parts.map(({ id, volume }) => [id, volume])).toEqual([
    ['chicken', expect.closeTo(33.333, 3)],
    ['beef', expect.closeTo(66.667, 3)],
  ])
  expect(blend.cost).toBeCloseTo(0.9666667, 7)
})

test('a can of anything costs 52 cents: 60 percent beef, 40 percent gel', () => {
  // Protein, left out here, is 12 of the 8 wanted and does not bind.
  const blend = blendWaters({ waters: foods, limits: can, volume: 100 })
  if (blend.outcome !== 'blend') throw new Error(blend.outcome)
  expect(blend.parts.map(({ id, volume }) => [id, volume])).toEqual([
    ['beef', expect.closeTo(60, 6)],
    ['gel', expect.closeTo(40, 6)],
  ])
  expect(blend.cost).toBeCloseTo(0.52, 9)
})

test('tap water of 70 mg/L nitrate needs 28.6 percent demineralised water', () => {
  const waters = [
    { id: 'tap', nitrate: 70, cost: 1 },
    { id: 'demineralised', nitrate: 0, cost: 5 },
  ]
  const blend = blendWaters({ waters, limits: { nitrate: { high: 50 } }, volume: 1 })
  if (blend.outcome !== 'blend') throw new Error(blend.outcome)
  expect(blend.parts.find(({ id }) => id === 'demineralised')!.fraction).toBeCloseTo(0.286, 3)
})

test('at 20 cycles a limit of 5000 is one of 250 in the make-up, at 2.67 one of 800 is one of 300', () => {
  // UFC 3-240-13FN, read in a copy: 5000/250 and 800/300.
  const of = (high: number, cycles: number) =>
    makeUpLimits({ sumpLimits: { hardness: { high } }, cycles }).hardness!.high
  expect(of(5000, 20)).toBe(250)
  expect(of(800, 2.67)).toBeCloseTo(300, -1)
})

/** Numbers from 0 to 1 from a generator of fixed seed. */
function numbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 4294967296
  }
}

test('two thousand random blends cost what HiGHS says, or are as impossible as it says', () => {
  const next = numbers(20261125)
  const whole = (most: number) => Math.floor(next() * (most + 1))
  let [possible, impossible] = [0, 0]
  for (let trial = 0; trial < 2000; trial += 1) {
    const waters = Array.from({ length: 1 + whole(6) }, (_, index) => ({
      id: `w${index}`,
      cost: whole(50),
      hardness: whole(400),
      chloride: whole(80),
      sulfate: whole(80),
      nitrate: whole(80),
    }))
    const middle = whole(300)
    const limits: MineralLimits = {
      hardness: { low: Math.max(0, middle - whole(80)), high: middle + whole(80) },
      chloride: { high: 10 + whole(70) },
      sulfate: { high: 10 + whole(70) },
      nitrate: { high: 10 + whole(70) },
    }
    const rows: [number[], number | null, number | null][] = [
      [waters.map(() => 1), 1, 1],
      ...minerals.map((mineral): [number[], number | null, number | null] => [
        waters.map((water) => water[mineral]),
        limits[mineral]?.low ?? null,
        limits[mineral]?.high ?? null,
      ]),
    ]
    const oracle = byHighs(
      program(
        'minimize',
        waters.map(({ cost }) => cost),
        rows,
      ),
    )
    const blend = blendWaters({ waters, limits, volume: 1 })
    if (oracle === null) {
      impossible += 1
      expect(blend.outcome, JSON.stringify({ waters, limits })).toBe('conflict')
    } else {
      possible += 1
      if (blend.outcome !== 'blend') throw new Error(JSON.stringify({ waters, limits }))
      expect(Math.abs(blend.costPerLitre! - oracle)).toBeLessThan(1e-7 * 50)
    }
  }
  expect(possible).toBeGreaterThan(300)
  expect(impossible).toBeGreaterThan(300)
})
