import { fluidOf, plainBook, sumpOf, timeAt, type Written } from './plain-book.ts'
import { type QuietSump, quietSump } from './quiet-sump.ts'
import type { Special } from './special.ts'

/**
 * What a contradictory book must still give: every figure of both sumps, now and ahead, finite, `low90` ≤ `mean` ≤ `high90`,
 * nothing below 0, a width above 0. `undisturbed` is the sump that has nothing wrong: its figures are those of the book
 * without the contradiction.
 */
export interface ContradictoryExpected {
  finite: true
  undisturbed: string
  /** Ids of the sump whose records contradict each other. */
  disturbed: string
}

const fluid = fluidOf('a', 1.2, 8)
const lastDay = 56
const disturbed: QuietSump = {
  id: 's1',
  fluid: 'a',
  brixFactor: 1.2,
  target: 8,
  mark: 200,
  evaporation: 3,
  carryOff: 1.2,
}
const undisturbed: QuietSump = { ...disturbed, id: 's2', mark: 320, evaporation: 5, carryOff: 2 }
const calm = [disturbed, undisturbed].flatMap((sump) => quietSump(sump, lastDay, ({ brix }) => brix).written)
const ofSump = (atMs: number, kind: string, fields: object): Written =>
  ({ atMs, kind, sump: 's1', ...fields }) as Written
const charge = { volume: 190, strength: 8, water: 'tap', fluid: 'a', heldBack: 10 }

/** The same book with nothing wrong in it. */
export const calmBook = () => special('Eight weeks of two quiet sumps.', [])

function special(story: string, wrong: Written[], base: readonly Written[] = calm): Special<ContradictoryExpected> {
  const sumps = [disturbed, undisturbed].map(({ id, mark }) => sumpOf(id, 'a', mark))
  return {
    story,
    book: plainBook([fluid], sumps, [...base, ...wrong]),
    atMs: timeAt(lastDay, 18),
    expected: { finite: true, undisturbed: 's2', disturbed: 's1' },
  }
}

const parts = {
  drawOffTooLarge: () => [ofSump(timeAt(30, 14), 'drawoff', { volume: 5000 })],
  entriesBeforeCharge: () => [
    ofSump(timeAt(-20, 8), 'addition', { volume: 40, strength: 3, water: 'tap' }),
    ofSump(timeAt(-15, 8), 'reading', { brix: 6.1, volume: 150, instrument: 'refractometer' }),
    ofSump(timeAt(-15, 8), 'drawoff', { volume: 120 }),
    ofSump(timeAt(-2, 8), 'addition', { toMark: true, strength: 4, water: 'tap' }),
  ],
  twoChargesAtOnce: () => [
    ofSump(timeAt(33, 6), 'charge', charge),
    ofSump(timeAt(33, 6), 'charge', { ...charge, volume: 170, strength: 5, heldBack: 0 }),
  ],
  clocksYearsOff: () => [
    ofSump(timeAt(-16 * 365, 6), 'reading', { brix: 6.6, volume: 180, instrument: 'refractometer' }),
    ofSump(timeAt(-16 * 365, 7), 'addition', { volume: 20, strength: 3, water: 'tap' }),
    ofSump(timeAt(16 * 365, 6), 'reading', { brix: 6.9, instrument: 'refractometer' }),
    ofSump(timeAt(16 * 365, 7), 'charge', charge),
  ],
  emptied: () => [
    ofSump(timeAt(52, 14), 'drawoff', { volume: 200 }),
    ofSump(timeAt(52, 15), 'drawoff', { volume: 200 }),
    ofSump(timeAt(52, 16), 'reading', { volume: 0, brix: 0, pumps: 'stopped' }),
  ],
  transferToNowhere: () => [
    ofSump(timeAt(40, 14), 'transfer', { volume: 60, to: { sump: 'nowhere' } }),
    ofSump(timeAt(41, 14), 'transfer', { volume: 10, to: { sump: 's1' } }),
  ],
  meterRunsBack: () =>
    [900, 950, 120, 4, 100_000, 30].map((count, i) =>
      ofSump(timeAt(20 + i, 14), 'addition', { meter: { id: 'meter-s1', count }, strength: 3, water: 'tap' }),
    ),
} satisfies Record<string, () => Written[]>

/** The books that contradict themselves, one contradiction each, and one with all of them. */
export const contradictory = {
  drawOffTooLarge: () => special('A draw-off of 5000 L from 200 L.', parts.drawOffTooLarge()),
  entriesBeforeCharge: () =>
    special('Pours, a reading and a draw-off before the first charge.', parts.entriesBeforeCharge()),
  twoChargesAtOnce: () => special('Two different charges in the same minute.', parts.twoChargesAtOnce()),
  clocksYearsOff: () => special('A phone sixteen years slow and another sixteen years fast.', parts.clocksYearsOff()),
  emptied: () => special('Drawn off twice over, and read as empty.', parts.emptied()),
  neverWritten: () =>
    special(
      'A sump of which nothing was ever written.',
      [],
      calm.filter(({ sump }) => sump === 's2'),
    ),
  transferToNowhere: () =>
    special('Transfers to a sump that the book does not know, and to itself.', parts.transferToNowhere()),
  meterRunsBack: () => special('A meter that runs backwards and leaps.', parts.meterRunsBack()),
  allAtOnce: () =>
    special(
      'All of these contradictions in one book.',
      Object.values(parts).flatMap((part) => part()),
    ),
}
