import type { DoubtKind, EstimatedDoubt } from '../answer-types.ts'
import type { SumpState, Surprise } from '../shop-estimate.ts'
import { storiesOf } from './stories-of.ts'

/** The doubt that a surprise comes to; null where nothing is likely to be wrong. */
export function doubtOf(sump: SumpState, surprise: Surprise, open: boolean): EstimatedDoubt | null {
  type Told = { kind: DoubtKind | 'stands'; probability: number; volume: number }
  const told = storiesOf(sump, surprise).flatMap(({ story, probability, volume }): Told[] =>
    story !== 'set-aside'
      ? [{ kind: story, probability, volume }]
      : [
          { kind: 'misread', probability: probability * (1 - surprise.otherSump), volume: 0 },
          { kind: 'wrong-sump', probability: probability * surprise.otherSump, volume: 0 },
        ],
  )
  told.sort((a, b) => b.probability - a.probability)
  const likeliest = told[0]!
  const asideTogether = told.reduce(
    (sum, { kind, probability }) => (kind === 'misread' || kind === 'wrong-sump' ? sum + probability : sum),
    0,
  )
  // That a figure is not this sump's is one story, whichever of the two it is called.
  const probability = isAside(likeliest.kind) ? asideTogether : likeliest.probability
  if (likeliest.kind === 'stands' || probability < 0.5) return null
  const { volume } = likeliest
  const kind = likeliest.kind === 'unlogged-water' && waterCame(sump, surprise.at) ? 'leak-in' : likeliest.kind
  return {
    kind,
    entry: surprise.entry,
    entries: [surprise.entry],
    at: surprise.at,
    probability: Math.min(1, probability),
    volume: kind.startsWith('unlogged') || kind === 'leak-in' ? volume : null,
    found: surprise.found,
    open,
    others: told
      .filter((one) => one !== likeliest && !(isAside(likeliest.kind) && isAside(one.kind)) && one.probability > 0.005)
      .map((one) => ({ kind: one.kind, probability: one.probability })),
  }
}

const isAside = (kind: string) => kind === 'misread' || kind === 'wrong-sump'

/** Water that nobody wrote a second time within a month is likelier to come by itself. */
const waterCame = (sump: SumpState, at: number): boolean =>
  sump.doubts.some((doubt) => isWater(doubt.kind) && at > doubt.at && at - doubt.at < 30) ||
  sump.surprises.some((one) => one.at < at && at - one.at < 30 && isWater(storiesOf(sump, one)[0]!.story))

const isWater = (kind: string) => kind === 'unlogged-water' || kind === 'leak-in'
