import { expect, test } from 'vitest'
import type { BenchBook } from './book.ts'
import { askPeer, emptyTally, summarise } from './measure.ts'
import type { Peer } from './peers/peer.ts'
import type { SimulatedShop } from './world.ts'

const came = { concentration: 8, volume: 100, hardness: 200 }
/** One sump, 8 % now and a tenth of a percent more each day. */
const shop: SimulatedShop = {
  book: {
    fluids: [{ id: 'f1', limits: { concentration: { low: 6, target: 8, high: 9 } } }],
    sumps: [{ id: 's1', fluid: 'f1' }],
    entries: [],
  } as unknown as BenchBook,
  truth: {
    at: () => ({ ...came, evaporation28: 4, carryOff28: 2 }),
    ahead: (_sump, _ms, days) => Array.from({ length: days + 1 }, (_, d) => ({ ...came, concentration: 8 + 0.1 * d })),
    losses: () => ({ evaporated: 0, carried: 0 }),
  },
  labels: { wrongReadings: [], missing: [], instrumentsOff: [] },
  instant: () => 0,
}
const figure = (mean: number) => ({ mean, sd: 1, low90: mean - 1.645, high90: mean + 1.645 })
const peerSaying = (concentration: number): Peer => ({
  name: 'fixed',
  estimate: () => {
    const figures = { concentration: figure(concentration), volume: figure(101), hardness: figure(200) }
    const now = { ...figures, evaporation: figure(5), carryOff: figure(2) }
    return new Map([['s1', { now, ahead: [{ days: 7, ...figures }], crossingDays: 12 }]])
  },
})

test('each figure is held against its own truth, now and ahead', async () => {
  const tally = emptyTally('fixed')
  await askPeer(tally, peerSaying(7), shop, [0, 1])
  const { figures, crossing } = summarise(tally)
  // 7 for 8 now; 7 for 8.7 in a week; 101 for 100; 5 for 4 is a quarter.
  expect(figures.concentration).toMatchObject({ cases: 2, trimmedRmse: 1, coverage: 1 })
  expect(figures['concentration+7']).toMatchObject({ trimmedRmse: 1.7, coverage: 0 })
  expect(figures.volume).toMatchObject({ trimmedRmse: 1, medianErrorPercent: 1 })
  expect(figures.evaporation).toMatchObject({ medianErrorPercent: 25 })
  // 8 + 0.1 a day passes 9 on day 10; called for day 12.
  expect(crossing).toMatchObject({ cases: 2, medianAbsoluteDays: 2, medianDays: 2 })
})

test('a figure that is not finite stops the bench and names its peer', async () => {
  const asked = askPeer(emptyTally('fixed'), peerSaying(Number.NaN), shop, [0])
  await expect(asked).rejects.toThrow('fixed: concentration')
})
