import { type GermClasses, type SlideRead, sampleMethodOf, sampleState, slideRead } from '@sumpbook/fluid'
import type { ShopGuidance } from '../guidance/shop-guidance.ts'
import { windowOf } from '../guidance/shop-guidance.ts'
import { chargeAt, type TestReading, type ToldOfShop, type ToldOfTests } from '../guidance/told-tests.ts'
import type { Value } from '../schema/values.ts'
import type { StrayResult, TakenSample } from './answer-types.ts'

const hourMs = 3_600_000
/** A sample whose window closed this long ago is given up (common practice, no source). */
const givenUpHours = 7 * 24

/** A sample that was taken, and what came of it. */
export interface Sample extends TakenSample {
  /** Oldest first. */
  results: SampleResult[]
  /** The result that counts; null where none does. */
  result: SampleResult | null
}

export interface SampleResult {
  /** Id of the entry that read it. */
  id: string
  readAt: string
  reading: TestReading
  /** Of a slide, what it is worth; null of other samples and of a slide without a count of bacteria. */
  slide: SlideRead | null
}

export interface SampleQuestion {
  guidance: ShopGuidance
  /** UTC text. */
  until: string
  /** The classes of germs that hold for a sump; null where nobody sets them. */
  classesOf(sump: string): GermClasses | null
}

/**
 * Samples and results put together. A result is of its sample's time and charge, whatever time it carries itself. Of several results of one
 * sample the one read within its window counts, else the first that says anything. Nothing is refused: a result that answers no
 * sample is told apart with the reason.
 */
export function foldSamples(
  { readings, withdrawn, bySump }: ToldOfShop,
  { guidance, until, classesOf }: SampleQuestion,
): { samples: Sample[]; strays: StrayResult[] } {
  const answers = new Map<string, TestReading[]>()
  const strays: StrayResult[] = []
  const samples: Sample[] = []
  for (const reading of readings.values()) {
    if (reading.answers === undefined) continue
    const wanted = reading.answers.toLowerCase()
    const why = strayOf(reading, readings.get(wanted), withdrawn.has(wanted))
    if (why === null) answers.set(wanted, [...(answers.get(wanted) ?? []), reading])
    else strays.push({ id: reading.id, sump: reading.sump, at: reading.at, answers: wanted, why })
  }
  for (const taken of readings.values()) {
    if (taken.pending !== true) continue
    const told = bySump.get(taken.sump)
    samples.push(
      sampleOf(taken, answers.get(taken.id) ?? [], { guidance, until, classesOf, charges: told?.charges ?? [] }),
    )
  }
  return { samples: withoutSuperseded(samples), strays }
}

function strayOf(
  result: TestReading,
  sample: TestReading | undefined,
  isWithdrawn: boolean,
): StrayResult['why'] | null {
  if (isWithdrawn) return 'withdrawn'
  if (sample === undefined) return 'no-such-entry'
  if (sample.pending !== true) return 'no-sample'
  if (sample.sump !== result.sump) return 'other-sump'
  return result.seenAt < sample.at ? 'before-its-sample' : null
}

function sampleOf(
  taken: TestReading,
  answered: readonly TestReading[],
  { guidance, until, classesOf, charges }: SampleQuestion & Pick<ToldOfTests, 'charges'>,
): Sample {
  const method = sampleMethodOf(taken.method ?? null)
  const window = windowOf(guidance, method)
  const hoursTo = (instant: string) => (Date.parse(instant) - Date.parse(taken.at)) / hourMs
  const charge = chargeAt({ charges }, taken.at)
  const results = answered
    .toSorted((a, b) => (a.seenAt < b.seenAt ? -1 : 1))
    .map((reading): SampleResult => {
      const count = method === 'dip slide' ? reading.bacteria : undefined
      const classes = classesOf(taken.sump)
      return {
        id: reading.id,
        readAt: reading.seenAt,
        reading,
        slide: count === undefined ? null : slideRead(count as Value, hoursTo(reading.seenAt), { window, classes }),
      }
    })
  const result = counting(results)
  const waited = hoursTo(until)
  const open = waited > window.toHours + givenUpHours ? 'never-read' : sampleState(waited, window)
  const after = (hours: number) => new Date(Date.parse(taken.at) + hours * hourMs).toISOString()
  return {
    id: taken.id,
    sump: taken.sump,
    at: taken.at,
    method,
    window,
    readFrom: after(window.fromHours),
    readTo: after(window.toHours),
    charge: charge === null ? null : { entry: charge.id, at: charge.at },
    state: result === null ? open : 'answered',
    results,
    result,
  }
}

function counting(results: readonly SampleResult[]): SampleResult | null {
  const within = results.findLast(({ slide }) => slide?.timing === 'in-window')
  return within ?? results.findLast(({ slide }) => slide?.counts !== 'not-yet') ?? null
}

/** A sample past its window is not read any more once a later one of its kind was taken at its sump. */
function withoutSuperseded(samples: readonly Sample[]): Sample[] {
  const latest = new Map<string, string>()
  for (const { sump, method, at } of samples) {
    const key = `${sump} ${method}`
    if (at > (latest.get(key) ?? '')) latest.set(key, at)
  }
  return samples.map((sample) =>
    sample.state === 'past' && latest.get(`${sample.sump} ${sample.method}`)! > sample.at
      ? { ...sample, state: 'never-read' }
      : sample,
  )
}
