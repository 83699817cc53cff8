import type { Figure, Peer, SumpEstimate } from '../peers/peer.ts'
import { type ChangeOverExpected, changeOver, changeOverRunning } from './change-over.ts'
import { calmBook, contradictory } from './contradictory.ts'
import { instrumentOff } from './instrument-off.ts'
import type { Near, Special } from './special.ts'

/** One thing that must come out of a book made by hand, beside what came. */
export interface Judged {
  story: string
  what: string
  expected: string
  found: string
  met: boolean
}

const aheadDays = [7, 14]
const ask = async (peer: Peer, { book, atMs }: Pick<Special<unknown>, 'book' | 'atMs'>) =>
  await peer.estimate(book, { atMs, aheadDays })
const all = (estimates: ReadonlyMap<string, SumpEstimate>) => [...estimates.values()]
const doubtsOf = (estimates: ReadonlyMap<string, SumpEstimate>) => all(estimates).flatMap(({ doubts }) => doubts ?? [])
const say = (value: number) => String(Number(value.toPrecision(4)))
const sayFigure = ({ mean, low90, high90 }: Figure) => `${say(mean)} (${say(low90)} to ${say(high90)})`

/** Whether one instrument doubt, and no other, came of one refractometer that was off on one round. */
export async function judgeInstrument(peer: Peer, given: Parameters<typeof instrumentOff>[0]): Promise<Judged[]> {
  const special = instrumentOff(given)
  const { story, expected } = special
  const estimates = await ask(peer, special)
  const doubts = doubtsOf(estimates)
  const named = new Set(doubts.filter(({ kind }) => kind === 'instrument').flatMap(({ entries }) => entries))
  const hits = expected.entries.filter((id) => named.has(id)).length
  const after = `${story} ${given?.roundsAfter ?? 0} rounds after it.`
  return [
    {
      story: after,
      what: 'doubts',
      expected: 'one, instrument',
      found: doubts.map(({ kind }) => kind).join(', ') || 'none',
      met: doubts.length === 1 && doubts[0]!.kind === 'instrument',
    },
    {
      story: after,
      what: 'readings that it names',
      expected: `most of ${expected.entries.length}, no others`,
      found: `${hits} and ${named.size - hits} others`,
      met: hits > expected.entries.length / 2 && named.size === hits,
    },
    ...Object.entries(expected.concentration).map(([id, near]) =>
      judgeNear(after, `concentration of ${id}`, estimates.get(id)!.now.concentration, near),
    ),
  ]
}

/** Whether a change-over reads right. */
export async function judgeChangeOver(peer: Peer, special: Special<ChangeOverExpected>): Promise<Judged[]> {
  const { story, expected } = special
  const estimates = await ask(peer, special)
  const { concentration, volume } = estimates.get('s1')!.now
  const doubts = doubtsOf(estimates)
  return [
    judgeNear(story, 'concentration', concentration, expected.concentration),
    judgeNear(story, 'volume', volume, expected.volume),
    {
      story,
      what: 'doubts',
      expected: 'none',
      found: doubts.map(({ kind }) => kind).join(', ') || 'none',
      met: doubts.length === expected.doubts,
    },
  ]
}

export const changeOvers = [changeOver, changeOverRunning]
export const instruments = [
  {},
  { roundsAfter: 1 },
  { roundsAfter: 2 },
  { sumps: 6 },
  { sumps: 6, roundsAfter: 2 },
  { sumps: 10, roundsAfter: 1, offset: -0.4 },
]

/** Whether a book that contradicts itself gives figures all the same, and leaves the sump alone that has nothing wrong. */
export async function judgeContradictory(peer: Peer, name: keyof typeof contradictory): Promise<Judged[]> {
  const special = contradictory[name]()
  const { story, expected } = special
  const estimates = await ask(peer, special)
  const odd = [...estimates].flatMap(([id, estimate]) => oddFigures(estimate).map((text) => `${id} ${text}`))
  const calm = (await ask(peer, calmBook())).get(expected.undisturbed)!
  const apart = furthestApart(estimates.get(expected.undisturbed)!, calm)
  return [
    {
      story,
      what: 'figures',
      expected: 'finite, in order, of some width',
      found: odd.join('; ') || 'so',
      met: odd.length === 0,
    },
    {
      story,
      what: `${expected.undisturbed} beside the calm book`,
      expected: `means within ${sameWithin} of an sd, sds within ${100 * sameWithin} %`,
      found: apart.text,
      met: apart.most <= sameWithin,
    },
  ]
}

/** What another sump's contradictions may move by the instrument and the habits that both share, in sds of the calm book. */
const sameWithin = 0.1

function judgeNear(story: string, what: string, figure: Figure, { value, within }: Near): Judged {
  const met = Math.abs(figure.mean - value) <= within && figure.low90 <= value && value <= figure.high90
  return { story, what, expected: `${say(value)} ± ${within}, in the interval`, found: sayFigure(figure), met }
}

/** All figures of an estimate by their names. */
export function figuresOf({ now, ahead }: SumpEstimate): [name: string, figure: Figure][] {
  const ofNow = Object.entries(now).map(([name, figure]): [string, Figure] => [name, figure])
  const later = ahead.flatMap(({ days, ...figures }) =>
    (['concentration', 'volume', 'hardness'] as const).map((name): [string, Figure] => [
      `${name}+${days}`,
      figures[name],
    ]),
  )
  return [...ofNow, ...later]
}

/** Figures that cannot be: not finite, below nothing, without width, out of order. */
export function oddFigures(estimate: SumpEstimate): string[] {
  return figuresOf(estimate).flatMap(([name, figure]) => {
    const { mean, sd, low90, high90 } = figure
    const isSound =
      [mean, sd, low90, high90].every(Number.isFinite) && low90 >= 0 && low90 <= mean && mean <= high90 && sd > 0
    return isSound ? [] : [`${name} ${JSON.stringify(figure)}`]
  })
}

function furthestApart(one: SumpEstimate, calm: SumpEstimate): { most: number; text: string } {
  const before = new Map(figuresOf(calm))
  return figuresOf(one)
    .map(([name, figure]) => {
      const was = before.get(name)!
      const most = Math.max(Math.abs(figure.mean - was.mean) / was.sd, Math.abs(figure.sd / was.sd - 1))
      return { most, text: `${name} ${sayFigure(figure)} beside ${sayFigure(was)}` }
    })
    .reduce((worst, next) => (next.most > worst.most ? next : worst))
}
