import { isDeepStrictEqual } from 'node:util'
import { say } from '@sumpbook/fluid'
import { type Fault, refusal } from '../errors.ts'
import { utc } from '../journal/order.ts'
import { referenceFaults } from '../journal/references.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import { type BookFile, bookFile, bookFormat } from '../schema/book-file.ts'
import type { Entry, Setup } from '../schema/entries/index.ts'
import { faultsOf, sayFound } from '../schema/faults.ts'
import { thingKinds } from '../schema/things/index.ts'
import { unknownFields } from '../schema/unknown-fields.ts'
import { withoutCanonicalForm } from '../schema/whole-text.ts'
import { brimFaults } from '../setup/brim.ts'
import { type BaseThing, thingHistory } from '../setup/things.ts'

/** A book file, read and found whole. */
export interface BookDocument {
  file: BookFile
  warnings: string[]
}

/**
 * Reads a book file and judges all of it, without a clock: every fault is listed with its JSON Pointer.
 *
 * @throws {BookError} `refused-input` with every fault
 */
export function readBookDocument(text: string): BookDocument {
  const input = parseJson(text)
  const parsed = bookFile.safeParse(input)
  if (!parsed.success) throw refusal(faultsOf(parsed.error, input), 'book file')
  const file = input as BookFile
  const faults = [...withoutCanonicalForm(file), ...doubledThings(file), ...doubledEntries(file), ...factFaults(file)]
  if (faults.length > 0) throw refusal(faults, 'book file')
  const warnings = unknownFields(bookFile, file).map((pointer) =>
    say('{pointer} is not a field of {format}; it is kept.', { pointer, format: bookFormat }),
  )
  return { file, warnings }
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw refusal(
      [
        {
          pointer: '',
          found: say('text that is not JSON to its end ({why})', { why }),
          expected: say('a whole JSON document'),
        },
      ],
      'book file',
    )
  }
}

/** The things of a file's sections, as a history's beginning. */
export function thingsOf(file: BookFile): BaseThing[] {
  const sections = Object.entries(thingKinds).flatMap(([kind, { section }]) =>
    (file[section] ?? []).map((body) => ({ kind, id: body.id, body: body as Record<string, unknown> })),
  )
  return [{ kind: 'shop', id: 'shop', body: file.shop ?? {} }, ...sections]
}

/** The set-up entries of a file that stand. */
export function setupsOf(file: BookFile): Setup[] {
  const entries = file.entries ?? []
  const withdrawn = withdrawnBy(
    entries.flatMap((entry) =>
      entry.kind === 'void' ? [{ id: entry.id.toLowerCase(), target: entry.entry.toLowerCase() }] : [],
    ),
  )
  return entries.filter((entry) => entry.kind === 'setup').filter(({ id }) => !withdrawn.has(id.toLowerCase()))
}

function doubledThings(file: BookFile): Fault[] {
  return Object.values(thingKinds).flatMap(({ section }) => {
    const seen = new Set<string>()
    return (file[section] ?? []).flatMap(({ id }, i) => {
      if (!seen.has(id)) return seen.add(id) && []
      return [
        {
          pointer: `/${section}/${i}/id`,
          found: sayFound(id),
          expected: say('an id that no other of this section has'),
        },
      ]
    })
  })
}

/** The same entry twice is one entry; two under one id are a fault. */
function doubledEntries(file: BookFile): Fault[] {
  const seen = new Map<string, Entry>()
  return (file.entries ?? []).flatMap((entry, i) => {
    const id = entry.id.toLowerCase()
    const first = seen.get(id)
    if (first === undefined) return seen.set(id, entry) && []
    if (isDeepStrictEqual(first, entry)) return []
    return [{ pointer: `/entries/${i}/id`, found: sayFound(entry.id), expected: say('an id that no other entry has') }]
  })
}

function factFaults(file: BookFile): Fault[] {
  const history = thingHistory(thingsOf(file), setupsOf(file))
  const now = history.at()
  const fluids = (file.sumps ?? []).flatMap(({ fluid }, i) =>
    now.fluid.has(fluid)
      ? []
      : [{ pointer: `/sumps/${i}/fluid`, found: sayFound(fluid), expected: say('the id of a fluid of this book') }],
  )
  const entries = (file.entries ?? []).flatMap((entry, i) => {
    const at = `/entries/${i}`
    const sump = entry.kind === 'reading' ? history.at(utc(entry.at)).sump.get(entry.sump) : undefined
    return [
      ...referenceFaults(entry, now, at),
      ...(entry.kind === 'reading' && sump !== undefined ? brimFaults(entry, sump, at) : []),
    ]
  })
  return [...fluids, ...entries]
}
