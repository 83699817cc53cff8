// `npx node bench/estimate/run.ts`: what the book and simple estimators reach on simulated shops, kept in bench/results.
import { parseArgs } from 'node:util'
import { keepResult } from './keep-result.ts'
import { limitsOf, ratiosOf, sayLimits } from './limits.ts'
import { askPeer, emptyTally, summarise } from './measure.ts'
import { trimmedShare } from './metrics/errors.ts'
import { simulateOtherShop } from './other-shop/other-shop.ts'
import { commandLine } from './peers/command-line.ts'
import { lastReading } from './peers/last-reading.ts'
import { oracle } from './peers/oracle.ts'
import type { Peer } from './peers/peer.ts'
import { plainFilter } from './peers/plain-filter.ts'
import { straightLine } from './peers/straight-line.ts'
import { sumpbook } from './peers/sumpbook.ts'
import { simulateShop } from './simulate/shop.ts'
import { tableOf } from './table.ts'
import type { SimulatedShop, World } from './world.ts'

const { values } = parseArgs({
  options: {
    shops: { type: 'string', default: '10' },
    sumps: { type: 'string', default: '20' },
    /** One or several, `1,2,3`: their cases are counted together. */
    seed: { type: 'string', default: '1' },
    /** Which simulator: `first` or `second`. */
    world: { type: 'string', default: 'first' },
    /** A program that answers like `sumpbook estimate`, its words apart by blanks. */
    command: { type: 'string' },
    'no-file': { type: 'boolean', default: false },
  },
})
const whole = (name: 'shops' | 'sumps' | 'seed', text = values[name]) => {
  const number = Number(text)
  if (!Number.isSafeInteger(number) || number < 1)
    throw new RangeError(`--${name} ${values[name]}: a whole number from 1`)
  return number
}
const size = {
  shops: whole('shops'),
  sumps: whole('sumps'),
  seeds: values.seed.split(',').map((text) => whole('seed', text)),
}

const worlds: Record<string, World> = { first: simulateShop, second: simulateOtherShop }
const world = worlds[values.world]
if (world === undefined) throw new RangeError(`--world ${values.world}: ${Object.keys(worlds).join(' or ')}`)

/** Days and hours at which each shop is asked: in the shift, before it, on a weekend, at the end. */
const asked = [
  [61, 13],
  [93, 5],
  [124, 19],
  [152, 13],
  [181, 20],
] as const

const words = values.command?.split(' ') ?? []
const asCommand = words.length > 0 ? [commandLine(values.command!, words as [string, ...string[]])] : []

const peersOf = ({ truth }: SimulatedShop): Peer[] => [
  lastReading,
  straightLine,
  plainFilter({ name: 'plain filter', gate: 4, losses: null }),
  plainFilter({ name: 'plain filter, no gate', gate: null, losses: null }),
  oracle(truth),
  sumpbook,
  ...asCommand,
]

const tallies = new Map<string, ReturnType<typeof emptyTally>>()
for (const seed of size.seeds) {
  for (let number = 1; number <= size.shops; number++) {
    const shop = world({ seed, shop: number, sumps: size.sumps })
    const instants = asked.map(([day, hour]) => shop.instant(day, hour))
    for (const peer of peersOf(shop)) {
      const tally = tallies.get(peer.name) ?? emptyTally(peer.name)
      tallies.set(peer.name, tally)
      await askPeer(tally, peer, shop, instants)
    }
  }
}

const results = [...tallies.values()].map(summarise)
process.stdout.write(tableOf(results))
const resultOf = (name: string) => results.find((result) => result.name === name)!
const [last, plain] = [resultOf('last reading'), resultOf('plain filter')]
const judged = [sumpbook.name, ...asCommand.map(({ name }) => name)].map((name) => {
  const ours = resultOf(name)
  const ratios = [plain, last].map((other) => ratiosOf(ours, other))
  const limits = limitsOf(ours, plain, last)
  for (const { beside, ...over } of ratios) {
    const said = Object.entries(over).map(([figure, ratio]) => `${figure} ${ratio.toFixed(2)}`)
    process.stdout.write(`\n${name} over ${beside}: ${said.join(', ')}\n`)
  }
  for (const figure of ['concentration', 'concentration+7']) {
    const { held, under, over, tenths } = ours.figures[figure]!.calibration
    const levels = Object.entries(held).map(([level, share]) => `${level} %: ${percent(share)}`)
    process.stdout.write(
      `\n${figure}, held by intervals of ${levels.join(', ')}; under ${percent(under)}, over ${percent(over)}`,
    )
    process.stdout.write(`\n  tenths ${tenths.map(percent).join(' ')}\n`)
  }
  process.stdout.write(`\n${sayLimits(limits)}`)
  return { name, ratios, limits }
})
if (!values['no-file']) {
  keepResult(values.world, {
    ...size,
    askedOn: asked.map(([day, hour]) => ({ day, hour })),
    trimmedShare,
    judged,
    peers: results,
  })
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)}%`
}
