import {
  codeCautions,
  dayText,
  plainCode,
  type Reader,
  reconciled,
  sayBeyond,
  sayCautions,
  sayReconciled,
  sayTerm,
  sayWaste,
  sayWasteUnmeasured,
  unitsHere,
  type WasteKind,
} from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { calendarOf } from '../estimate/calendar-of.ts'
import type { Logged } from '../journal/entry-log.ts'
import type { Things } from '../setup/things.ts'
import { type ContainerNow, containersNow, litresOf } from './containers-now.ts'
import type { PickupLine, WasteAnswer, WasteContainerNow } from './waste-answer.ts'
import { wasteGiven } from './waste-given.ts'
import { type WasteEntry, wasteLog } from './waste-log.ts'

export interface WasteQuestion {
  at: Date
  /** Entries after it do not count; the time of asking unless given. */
  until?: Date
  /** Days of the sums and lists, in the shop's zone; the last 90 without them. */
  from?: string
  to?: string
  reader?: Partial<Reader>
}

const usualDays = 90

/** Every waste container as it stands, and whether what the sumps gave came into them. Queries never write. */
export async function readWaste(parts: BookParts, question: WasteQuestion): Promise<WasteAnswer> {
  const { log, containers, things, today, dayAt } = await wasteOfShop(parts, question)
  const reader = { units: unitsHere(things.shop), ...question.reader, today }
  const from = question.from ?? dayText(today - usualDays)
  const to = question.to ?? dayText(today)
  const isAsked = ({ at }: Pick<Logged<unknown>, 'at'>) => dayText(dayAt(at)) >= from && dayText(dayAt(at)) <= to
  const asked = log.filter(isAsked)
  const given = wasteGiven(asked, things, dayAt)
  return {
    at: question.at.toISOString(),
    today: dayText(today),
    from,
    to,
    containers: containers.map((one) =>
      containerAnswer(one, { reader, isAsked, dayAt, isUs: things.shop.units === 'us' }),
    ),
    balance: balanceOf(given, storedByKind(containers, isAsked), reader),
    unmeasured: given.unmeasured === 0 ? null : sayWasteUnmeasured(given.unmeasured),
  }
}

/** The waste of a shop, from its entries. */
export async function wasteOfShop(
  { journal, things: readThings }: BookParts,
  { at, until = at }: Pick<WasteQuestion, 'at' | 'until'>,
): Promise<{
  log: Logged<WasteEntry>[]
  containers: ContainerNow[]
  things: Things
  today: number
  dayAt: (at: string) => number
}> {
  const [all, history] = await Promise.all([wasteLog(journal), readThings()])
  const { clock } = calendarOf(history)
  const dayAt = (instant: string) => Math.floor(clock.at(Date.parse(instant)))
  const end = until.toISOString()
  const log = all.filter((entry) => entry.at <= end)
  const [things, today] = [history.at(end), Math.floor(clock.at(at.getTime()))]
  return { log, containers: containersNow(log, things, { today, dayAt }), things, today, dayAt }
}

type AnswerReader = Reader & { today: number }

function containerAnswer(
  one: ContainerNow,
  {
    reader,
    isAsked,
    dayAt,
    isUs,
  }: {
    reader: AnswerReader
    isAsked: (entry: Pick<Logged<unknown>, 'at'>) => boolean
    dayAt: (at: string) => number
    isUs: boolean
  },
): WasteContainerNow {
  const { container, isSetUp, now, entries } = one
  const { id, name, stream = null, kind = 'other', code = null, place = null, capacity = null, term } = container
  const day = (at: string) => dayText(dayAt(at))
  return {
    id,
    name,
    isSetUp,
    stream,
    kind,
    code: code === null ? null : plainCode(code),
    place,
    capacity,
    sentence: sayWaste({ name, now, capacity }, reader),
    term: sayTerm(
      now,
      term === undefined ? null : { ...term, source: term.source ?? null, from: term.from ?? 'first' },
      reader,
    ),
    cautions: sayCautions(codeCautions({ kind, code, isUs })),
    doubts: now.beyond.map((pickup) => sayBeyond(pickup, reader)),
    litres: now.litres,
    full: now.full,
    fullOn: now.fullOn === null ? null : dayText(now.fullOn),
    daily: now.daily,
    clock:
      now.clock.outcome === 'running'
        ? {
            startedOn: dayText(now.clock.startedOn),
            endsOn: dayText(now.clock.endsOn),
            daysLeft: now.clock.daysLeft,
          }
        : null,
    stored: entries
      .filter(isAsked)
      .flatMap(({ id: entry, at, kept }) =>
        kept.kind === 'stored'
          ? [{ entry, on: day(at), litres: litresOf(kept, container), kilograms: kept.kilograms, from: kept.from }]
          : [],
      )
      .reverse(),
    pickups: pickupLines(one, reader, day).filter((line) => isAskedDay(line, isAsked, entries)),
  }
}

/** Pickups of the days asked for, and all whose document is missing. */
const isAskedDay = (
  { entry, document }: PickupLine,
  isAsked: (entry: Pick<Logged<unknown>, 'at'>) => boolean,
  entries: ContainerNow['entries'],
) => document === null || isAsked(entries.find(({ id }) => id === entry)!)

/** Every pickup of a container, newest first. */
export function pickupLines(
  { container, entries, now, documents }: ContainerNow,
  reader: AnswerReader,
  day: (at: string) => string,
): PickupLine[] {
  return entries
    .flatMap(({ id, at, kept }) => {
      if (kept.kind !== 'pickup') return []
      const beyond = now.beyond.find(({ entry }) => entry === id)
      return [
        {
          entry: id,
          on: day(at),
          litres: litresOf(kept, container),
          kilograms: kept.kilograms,
          code: kept.code === null ? null : plainCode(kept.code),
          document: kept.document ?? documents.get(id) ?? null,
          doubt: beyond === undefined ? null : sayBeyond(beyond, reader),
        },
      ]
    })
    .reverse()
}

function storedByKind(
  containers: readonly ContainerNow[],
  isAsked: (entry: Pick<Logged<unknown>, 'at'>) => boolean,
): Map<WasteKind, number> {
  const sums = new Map<WasteKind, number>()
  for (const { container, entries } of containers) {
    const kind = container.kind ?? 'other'
    for (const entry of entries.filter(isAsked)) {
      if (entry.kept.kind !== 'stored') continue
      sums.set(kind, (sums.get(kind) ?? 0) + (litresOf(entry.kept, container) ?? 0))
    }
  }
  return sums
}

/** Emulsion and rinse water are held against draw-offs and cleanouts, oil against skims; the rest has nothing to be held against. */
function balanceOf(
  given: { emulsion: number; oil: number },
  stored: ReadonlyMap<WasteKind, number>,
  reader: AnswerReader,
): WasteAnswer['balance'] {
  const sums = [
    {
      kind: 'emulsion' as const,
      given: given.emulsion,
      stored: (stored.get('emulsion') ?? 0) + (stored.get('rinse') ?? 0),
    },
    { kind: 'oil' as const, given: given.oil, stored: stored.get('oil') ?? 0 },
  ]
  return sums.flatMap(({ kind, ...both }) => {
    const found = reconciled(both)
    const says = sayReconciled(kind, both, found, reader)
    if (says === null) return []
    return [{ kind, ...both, outcome: found.outcome, litres: 'litres' in found ? found.litres : 0, says }]
  })
}
