import { say } from '@sumpbook/fluid'
import type { Things } from '../setup/things.ts'
import type { Assumption, NamedPrice } from './answer-types.ts'
import { stopMinutes } from './stops.ts'

/** The shop's own figures as they stood at the end of the time asked for. */
export function assumptionsOf({ shop: { costs = {} } }: Things): Assumption[] {
  const figures: Assumption['figure'][] = [
    'labourPerHour',
    'machinePerHour',
    'minutesPerStop',
    'cleanerPerLitre',
    'wastePerLitre',
    'wastePerPickup',
    'leanPerDay',
  ]
  return figures.map((figure) => ({ figure, value: costs[figure] ?? null }))
}

/** Every waste stream and additive that a price may be set for. */
export function namedPrices(
  { shop: { costs = {} }, waste }: Things,
  additivesPoured: readonly string[],
): { streams: NamedPrice[]; additives: NamedPrice[] } {
  const { wasteStreams = [], additives = [] } = costs
  const kept = [...waste.values()].flatMap(({ stream }) => (stream === undefined ? [] : [stream]))
  const named = (names: readonly string[], priced: readonly { name: string; perLitre?: number | undefined }[]) => {
    const all = new Map([...names, ...priced.map(({ name }) => name)].map((name) => [name.trim().toLowerCase(), name]))
    return [...all].map(([key, name]) => ({
      name,
      perLitre: priced.find((one) => one.name.trim().toLowerCase() === key)?.perLitre ?? null,
    }))
  }
  return {
    streams: named(
      kept,
      wasteStreams.map(({ stream, perLitre }) => ({ name: stream, perLitre })),
    ),
    additives: named(additivesPoured, additives),
  }
}

/** What is taken for granted in every figure, a sentence each. */
export const groundRules = (): string[] => [
  say('Each pour is priced by its lot or fluid at its own time; a price that changed later does not touch it.'),
  say('A stop on a round is what was entered at one sump with no more than {minutes} minutes between.', {
    minutes: stopMinutes,
  }),
  say(
    'Cleaner is reckoned for a sump filled to its mark. A cleanout’s hours count for whoever did it and for every machine of the sump.',
  ),
  say(
    'Waste is counted when it is picked up, for the shop as a whole; what each sump gave stands beside it and is not counted twice.',
  ),
  say('A treated water’s price is taken to be what a litre of it costs, treatment included.'),
]
