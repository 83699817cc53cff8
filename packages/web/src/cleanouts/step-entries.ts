import type { Entry } from '../api/types.ts'
import { envelope, type Stamp } from '../entry/stamp.ts'
import type { Job, JobStep } from './asks.ts'

/** A count of a slide as its classes give it. */
export type SlideClass = number | { below: number } | { low: number; high: number } | { atLeast: number }

/** What was read at a step; null where nothing was. Litres, percent, canonical units. */
export interface StepFigures {
  freshPh: number | null
  rinsePh: number | null
  ph: number | null
  brix: number | null
  /** Litres of tramp oil. */
  oil: number | null
  look: string | null
  smell: string | null
  bacteria: SlideClass | null
  lot: string
  note: string
}

export const noFigures: StepFigures = {
  freshPh: null,
  rinsePh: null,
  ph: null,
  brix: null,
  oil: null,
  look: null,
  smell: null,
  bacteria: null,
  lot: '',
  note: '',
}

/** A step's sign-off with what was read at it, and the facts that doing it makes: oil skimmed, a reading, the fresh charge. */
export function stepEntries(job: Pick<Job, 'id' | 'sump'>, step: JobStep, figures: StepFigures, stamp: Stamp): Entry[] {
  const subject = job.sump === null ? { about: { kind: 'shop' } } : { sump: job.sump }
  const asked = Object.fromEntries(
    step.asks.flatMap((key) => {
      const value = figures[key]
      return value === null || value === '' ? [] : [[key, value]]
    }),
  )
  const entries: unknown[] = [
    {
      ...envelope(stamp),
      kind: 'signoff',
      ...subject,
      job: job.id,
      step: step.id,
      ...(Object.keys(asked).length === 0 ? {} : { values: asked }),
      ...(figures.note === '' ? {} : { note: figures.note }),
    },
  ]
  for (const write of step.writes) {
    const ofSump = 'about' in write || job.sump === null ? {} : { sump: job.sump }
    const lot = write.kind === 'charge' && figures.lot !== '' ? { lot: figures.lot } : {}
    entries.push({ ...envelope(stamp), ...ofSump, ...write, ...lot })
  }
  if (job.sump !== null) entries.push(...readAt(job.sump, step, figures, stamp))
  return entries as Entry[]
}

/** pH of a rinse is none of the sump's fluid, and stays with its sign-off. */
function readAt(sump: string, { asks }: JobStep, { oil, brix, ph, bacteria }: StepFigures, stamp: Stamp): unknown[] {
  const entries: unknown[] = []
  if (asks.includes('oil') && oil !== null) entries.push({ ...envelope(stamp), kind: 'skim', sump, litres: oil })
  const figures = {
    ...(asks.includes('brix') && brix !== null ? { brix } : {}),
    ...(asks.includes('ph') && ph !== null ? { ph } : {}),
    ...(asks.includes('bacteria') && bacteria !== null ? { bacteria, method: 'dip slide' } : {}),
  }
  if (Object.keys(figures).length > 0) entries.push({ ...envelope(stamp), kind: 'reading', sump, ...figures })
  return entries
}

/** A job's opening: an entry that names itself. */
export function openingEntry(opening: Record<string, unknown>, stamp: Stamp): Entry {
  const made = envelope(stamp)
  return { ...made, ...opening, job: made.id } as unknown as Entry
}

/** Somebody says that they do something, or lets go of it. */
export function claimEntry(key: string, step: 'claimed' | 'released', sump: string | null, stamp: Stamp): Entry {
  const subject = sump === null ? { about: { kind: 'shop' as const } } : { sump }
  return { ...envelope(stamp), kind: 'signoff', ...subject, claim: key, step }
}
