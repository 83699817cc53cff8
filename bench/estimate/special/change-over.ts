import { fluidOf, plainBook, sumpOf, timeAt, type Written } from './plain-book.ts'
import type { Near, Special } from './special.ts'

export interface ChangeOverExpected {
  concentration: Near
  volume: Near
  /** What the new fluid's factor alone would make of the last °Brix, percent: wrong. */
  byNewFactorAlone: number
  /** No doubt of any kind. */
  doubts: 0
}

/**
 * 300 L of fluid a at 8 % (1.0 percent per °Brix) are let out but for 30 L, and 270 L of fluid b at 6 % (2.0 percent per
 * °Brix) are poured in, with all of it written down:
 *
 *     concentrate     30 · 8 %  +  270 · 6 %  =  2.4 + 16.2  =  18.6 L in 300 L  =  6.2 %
 *     °Brix           0.8 / 1.0  +  5.4 / 2.0  =  0.8 + 2.7  =  3.5
 *     by b's factor   3.5 · 2.0  =  7.0 %
 *
 * The machine stands, so that nothing changes after it; it is read on four days.
 */
export function changeOver(): Special<ChangeOverExpected> {
  const reading = (day: number, brix: number): Written => ({
    atMs: timeAt(day, 9),
    kind: 'reading',
    sump: 's1',
    brix,
    volume: 300,
    pumps: 'stopped',
    instrument: 'refractometer',
  })
  const charge = { kind: 'charge', sump: 's1', water: 'tap' }
  const written: Written[] = [
    { ...charge, atMs: timeAt(0, 6), volume: 300, strength: 8, fluid: 'a', heldBack: 0 },
    reading(0, 8),
    reading(1, 8),
    { atMs: timeAt(1, 10), kind: 'cleanout', sump: 's1', wasteVolume: 270, rinses: 0 },
    { ...charge, atMs: timeAt(1, 12), volume: 270, strength: 6, fluid: 'b', heldBack: 30 },
    // Planned before it began, so that it is known on every day asked about.
    {
      atMs: timeAt(0, 5),
      kind: 'idle',
      sump: 's1',
      from: new Date(timeAt(0, 5)).toISOString(),
      to: new Date(timeAt(10)).toISOString(),
    },
    ...[2, 3, 4, 5].map((day) => reading(day, 3.5)),
  ]
  return {
    story: 'A change-over with 10 % heel of another fluid with another factor.',
    book: plainBook([fluidOf('a', 1, 8), fluidOf('b', 2, 6)], [sumpOf('s1', 'b', 300)], written),
    atMs: timeAt(5, 12),
    expected: {
      concentration: { value: 6.2, within: 0.25 },
      volume: { value: 300, within: 15 },
      byNewFactorAlone: 7,
      doubts: 0,
    },
  }
}

/**
 * The same at a machine that runs, seven weeks later: 200 L, of which 4 L evaporate and 2 L are carried off each day, with 6 L
 * of b at 2 % poured each noon. Carry-off has taken two fifths of the 1.6 L of a that stayed: 1.6 · 0.61 = 0.97 L.
 */
export function changeOverRunning(): Special<ChangeOverExpected> {
  const written: Written[] = [
    { atMs: timeAt(0, 6), kind: 'charge', sump: 's1', volume: 200, strength: 8, fluid: 'a', water: 'tap', heldBack: 0 },
    { atMs: timeAt(0, 9), kind: 'reading', sump: 's1', brix: 8, volume: 200, instrument: 'refractometer' },
    {
      atMs: timeAt(0, 12),
      kind: 'charge',
      sump: 's1',
      volume: 180,
      strength: 6,
      fluid: 'b',
      water: 'tap',
      heldBack: 20,
    },
  ]
  const days = 49
  let [ofA, ofB] = [1.6, 10.8]
  let last = 0
  for (let day = 1; day <= days; day++) {
    // From 200 to 194 L, a third of it with the fluid: what stays is (194/200)^(1/3).
    const kept = (194 / 200) ** (1 / 3)
    ofA *= kept
    ofB *= kept
    const brix = Math.round(10 * ((100 * ofA) / 194 / 1 + (100 * ofB) / 194 / 2)) / 10
    if (day % 3 === 1) {
      written.push({
        atMs: timeAt(day, 12),
        kind: 'reading',
        sump: 's1',
        brix,
        volume: 194,
        instrument: 'refractometer',
      })
      last = brix
    }
    written.push({
      atMs: timeAt(day, 12, 10),
      kind: 'addition',
      sump: 's1',
      volume: 6,
      strength: 2,
      water: 'tap',
      fluid: 'b',
    })
    ofB += 0.12
  }
  return {
    story: 'Seven weeks after a change-over with 10 % heel of another fluid with another factor.',
    book: plainBook([fluidOf('a', 1, 8), fluidOf('b', 2, 6)], [sumpOf('s1', 'b', 200)], written),
    atMs: timeAt(days, 12, 20),
    expected: {
      concentration: { value: (100 * (ofA + ofB)) / 200, within: 0.25 },
      volume: { value: 200, within: 10 },
      byNewFactorAlone: 2 * last,
      doubts: 0,
    },
  }
}
