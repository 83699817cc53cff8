import {
  dose,
  type Figure,
  overLabel,
  phVerdict,
  type Reader,
  rangeOf,
  say,
  sayDose,
  sayOverLabel,
  unitsHere,
} from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import { BookError } from '../errors.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Reading } from '../schema/entries/index.ts'
import type { Additive } from '../schema/things/additive.ts'
import type { Value } from '../schema/values.ts'
import type { JournalReader } from '../store/store.ts'
import { readSumps } from '../today/read-sumps.ts'
import { isNitriteWithAmines, labelOf } from './additive-label.ts'
import type { SumpDose, SumpDoses } from './answer-types.ts'
import { amountOf, type DoseEntry, givenDoses, isOf } from './given-doses.ts'

export interface DoseOptions {
  at: Date
  /** Entries after it do not count; the time of asking unless given. */
  until?: Date
  sump: string
  /** One alone, by its id; all of the shop without it. */
  additive?: string
  /** What somebody says is behind a falling pH. */
  cause?: string
  reader?: Partial<Reader>
}

const dayMs = 86_400_000
/** A fall from the fresh value of more than this is acted on (DGUV Regel 109-003, Annex 3). */
const actOnFall = 0.5
/** A pH read later than this after the charge is no fresh value (common practice, no source). */
const freshDays = 14

/**
 * Doses of a sump: for the least it is likely to hold, within what the shop typed from the labels, less what went in since the
 * charge. Queries never write.
 *
 * @throws {BookError} `not-found` a sump or an additive that the book does not have
 */
export async function readDoses(parts: BookParts, options: DoseOptions): Promise<SumpDoses> {
  const { at, until = at, sump, additive: asked, cause = '', reader = {} } = options
  const { items, things } = await readSumps(parts, { at, until, reader, sump })
  const now = items[0]!
  const additives = (things.shop.additives ?? []).filter(({ id }) => asked === undefined || id === asked)
  if (asked !== undefined && additives.length === 0) {
    throw new BookError('not-found', `This shop has no additive "${asked}".`)
  }
  const { doses, chargedAt } = await givenDoses(parts.journal, { sump, until: until.toISOString() })
  const charge = chargedAt.get(sump)?.at(-1) ?? Number.NEGATIVE_INFINITY
  const isFallUnexplained =
    cause.trim() === '' && (await hasFallen(parts.journal, { sump, charge, until: until.toISOString() }))
  const contents = things.fluid.get(now.fluid.id)?.contains
  const asReader = { units: unitsHere(things.shop), ...reader }
  return {
    sump,
    name: now.name,
    at: at.toISOString(),
    volume: now.volume,
    isFallUnexplained,
    doses: additives.map((additive) =>
      sumpDose(additive, {
        ...{ at: at.getTime(), name: now.name, volume: now.volume, reader: asReader, isFallUnexplained },
        given: doses.filter((one) => one.ms >= charge && isOf(one, additive)),
        isForbidden: isNitriteWithAmines(additive, contents),
        inDoubt: now.doubts.length > 0,
      }),
    ),
  }
}

interface SumpThere {
  at: number
  name: string
  volume: Figure | null
  given: readonly DoseEntry[]
  isFallUnexplained: boolean
  isForbidden: boolean
  inDoubt: boolean
  reader: Reader
}

function sumpDose(additive: Additive, there: SumpThere): SumpDose {
  const { at, name, volume, given, isFallUnexplained, isForbidden, inDoubt, reader } = there
  const { label, unit } = labelOf(additive)
  const answer = dose({
    ...{ label, volume, isFallUnexplained, inDoubt, isNitriteWithAmines: isForbidden },
    given: given.map((one) => ({ daysAgo: Math.max(0, at - one.ms) / dayMs, amount: amountOf(one, unit) })),
  })
  const { id, kind, who = 'keeper', label: words = '' } = additive
  const said = { name: additive.name, kind, unit, low: label.low, label: words }
  return {
    additive: { id, name: additive.name, kind, who, label: words },
    unit,
    answer,
    words: sayDose(answer, { ...reader, additive: said, sump: name }),
    given: given
      .map((one) => ({ entry: one.entry, at: new Date(one.ms).toISOString(), by: one.by, amount: amountOf(one, unit) }))
      .reverse(),
    contradictions: contradictionsOf(given, additive, volume?.mean ?? null, reader),
  }
}

/** Doses that were more, or sooner, than their label allows; by the volume as it is known now. */
export function contradictionsOf(
  given: readonly DoseEntry[],
  additive: Additive,
  volume: number | null,
  reader: Pick<Reader, 'locale'>,
): { entry: string; text: string }[] {
  const { label, unit } = labelOf(additive)
  return given.flatMap((one, i) => {
    const before = given
      .slice(0, i)
      .map((earlier) => ({ daysBefore: (one.ms - earlier.ms) / dayMs, amount: amountOf(earlier, unit) }))
    const over = overLabel({ amount: amountOf(one, unit), volume }, before, label)
    if (over === null) return []
    return [
      {
        entry: one.entry,
        text: say('{additive} went in with {fault}.', {
          additive: additive.name,
          fault: sayOverLabel(over, unit, reader),
        }),
      },
    ]
  })
}

/** Whether the last pH since the charge lies clearly under the fresh one. */
async function hasFallen(
  journal: JournalReader,
  { sump, charge, until }: { sump: string; charge: number; until: string },
): Promise<boolean> {
  if (!Number.isFinite(charge)) return false
  const since = new Date(charge).toISOString()
  const [entries, voids] = await Promise.all([
    journal.entries({ sump, kinds: ['reading'], order: 'time', since, until }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const read = entries.flatMap(({ id, at, body }) => {
    if (withdrawn.has(id) || !body.includes('"ph"')) return []
    const { ph } = JSON.parse(body) as Reading
    return ph === undefined ? [] : [{ ms: Date.parse(at), range: withinScale(rangeOf(ph as Value)) }]
  })
  const fresh = read.find(({ ms }) => ms - charge <= freshDays * dayMs)
  const last = read.at(-1)
  if (fresh === undefined || last === undefined || last === fresh) return false
  const question = { now: last.range, fresh: fresh.range, strength: null, change: null, floor: null }
  return phVerdict({ ...question, act: actOnFall }).outcome === 'act'
}

const withinScale = ({ low, high }: { low: number; high: number }) => ({
  low: Math.min(14, Math.max(0, low)),
  high: Math.min(14, Math.max(0, high)),
})
