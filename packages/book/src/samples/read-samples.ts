import { message, type Reader, say, sayNumber, sayReported, saySlide, unitsHere } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { readGuidedShop } from '../guidance/guided-shop.ts'
import { germClassesOf } from '../guidance/offered-limits.ts'
import { sayEntry } from '../journal/say-entry.ts'
import type { Value } from '../schema/values.ts'
import type { Things } from '../setup/things.ts'
import type { ResultLine, SampleLine, SamplesAnswer, StrayResult } from './answer-types.ts'
import type { Sample, SampleResult } from './fold-samples.ts'

/** Samples are looked for as far back. */
const daysBack = 120

/** What was sampled and not read yet, what was read, and what does not fit together. */
export async function readSamples(
  parts: Pick<BookParts, 'journal' | 'things'>,
  { at, until = at, reader = {} }: { at: Date; until?: Date; reader?: Partial<Reader> },
): Promise<SamplesAnswer> {
  const shop = await readGuidedShop(parts, { until, daysBack })
  const { things } = shop
  const units = { units: unitsHere(things.shop), ...reader }
  const line = (sample: Sample): SampleLine => ({
    ...sample,
    name: things.sump.get(sample.sump)?.name ?? sample.sump,
    says: saysOf(sample),
    results: sample.results.map((result) => resultLine(result, sample, things, units, shop.limits)),
    result: sample.result?.id ?? null,
  })
  const of = (...states: Sample['state'][]) => shop.samples.filter(({ state }) => states.includes(state)).map(line)
  const newestFirst = (a: SampleLine, b: SampleLine) => (a.at < b.at ? 1 : -1)
  return {
    at: at.toISOString(),
    guidance: shop.guidance.name,
    pending: of('to-read', 'past', 'growing').sort((a, b) => (a.readFrom < b.readFrom ? -1 : 1)),
    answered: of('answered').sort(newestFirst),
    neverRead: of('never-read').sort(newestFirst),
    strays: shop.strays.map((stray) => ({
      ...stray,
      name: things.sump.get(stray.sump)?.name ?? stray.sump,
      says: say(strayWords[stray.why]),
    })),
  }
}

function saysOf({ state, method, window }: Sample): string {
  const isLab = method === 'laboratory'
  switch (state) {
    case 'growing':
      return say('To be read {from} to {to} hours after it was taken.', {
        from: sayNumber(window.fromHours, 1, {}, 0),
        to: sayNumber(window.toHours, 1, {}, 0),
      })
    case 'to-read':
      return isLab ? say('The laboratory’s report is to come.') : say('To be read now.')
    case 'past':
      return isLab
        ? say('No report for two weeks: ask the laboratory.')
        : say('Its window has closed: read it as it is, what it is worth is said then, or take a fresh one.')
    case 'never-read':
      return say('Never read. It says nothing; a fresh sample takes its place.')
    case 'answered':
      return ''
  }
}

function resultLine(
  { id, readAt, reading, slide }: SampleResult,
  { sump }: Sample,
  things: Things,
  reader: Reader,
  limits: Awaited<ReturnType<typeof readGuidedShop>>['limits'],
): ResultLine {
  const classes = germClassesOf(limits.get(sump) ?? [])
  const moulds =
    reading.fungi === undefined
      ? []
      : [say('Moulds and yeasts {count} CFU/mL.', { count: sayReported(reading.fungi as Value, 0, reader) })]
  return {
    id,
    readAt,
    says:
      slide === null
        ? sayEntry(reading, things, reader)
        : [saySlide(reading.bacteria as Value, slide, reader), ...moulds].join(' '),
    slide,
    source: slide?.germs == null ? null : (classes?.source ?? null),
  }
}

const strayWords: Record<StrayResult['why'], string> = {
  'no-such-entry': message(
    'It answers a sample that has not arrived here, or that is older than what is looked at. It stands as a reading of its own.',
  ),
  withdrawn: message('It answers a sample that was set aside. It stands as a reading of its own.'),
  'no-sample': message('It answers an entry that took no sample. It stands as a reading of its own.'),
  'other-sump': message('It answers a sample of another sump: one of the two is wrong. Set the wrong one aside.'),
  'before-its-sample': message(
    'It was read before its sample was taken: one of the two times is wrong. It answers nothing.',
  ),
}
