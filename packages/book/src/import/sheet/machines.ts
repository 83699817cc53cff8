import { message, say } from '@sumpbook/fluid'
import type { Fault } from '../../errors.ts'
import { sha256 } from '../../journal/canonical.ts'
import { faultsOf } from '../../schema/faults.ts'
import type { Fluid, Sump } from '../../schema/things/index.ts'
import { thingKinds } from '../../schema/things/index.ts'
import type { SheetBook } from '../sheet-book.ts'
import type { NewSump, Question, SheetMap } from '../sheet-types.ts'
import { pointerKey, sameName } from './words.ts'

/** The machines of a sheet, and what must come into the book so that it knows them. */
export interface Machines {
  /** The sump of a machine as it is written in the sheet; null where none is known (a fault or a question says why). */
  sumpOf(name: string): Sump | null
  /** New sumps, in order of appearance. */
  added: Sump[]
  questions: Question[]
  faults: Fault[]
  warnings: string[]
}

interface MachineInput {
  /** As they stand in the sheet, in order of appearance. */
  names: readonly string[]
  book: Pick<SheetBook, 'sumps'>
  map: SheetMap
  /** Fluids of the book and of the map. */
  fluids: readonly Fluid[]
}

/** The names a book's sumps go by; a name goes before a machine's name, that before an id. */
export function namesOfSumps(sumps: readonly Sump[]): Map<string, Sump[]> {
  const names = new Map<string, Sump[]>()
  for (const nameOf of [({ name }: Sump) => [name], ({ machines }: Sump) => machines ?? [], ({ id }: Sump) => [id]]) {
    const here = new Map<string, Sump[]>()
    for (const sump of sumps) {
      for (const key of new Set(nameOf(sump).map(sameName))) here.set(key, [...(here.get(key) ?? []), sump])
    }
    for (const [key, found] of here) if (!names.has(key)) names.set(key, found)
  }
  return names
}

/** Finds every machine of the sheet in the book, or makes it new from what the map says; asks for what is missing. */
export function resolveMachines({ names, book, map, fluids }: MachineInput): Machines {
  const known = namesOfSumps(book.sumps)
  const answers = new Map(
    Object.entries(map.machines ?? {}).map(([name, answer]) => [sameName(name), { name, answer }]),
  )
  const found = new Map<string, Sump | null>()
  const wanted: Wanted[] = []
  const machines: Machines = {
    sumpOf: (name) => found.get(sameName(name)) ?? null,
    added: [],
    questions: [],
    faults: [],
    warnings: [],
  }
  for (const name of names) {
    const key = sameName(name)
    if (found.has(key)) continue
    const said = answers.get(key)
    const pointer = `/machines/${pointerKey(said?.name ?? name)}`
    if (typeof said?.answer === 'string') {
      found.set(key, null)
      wanted.push({ key, name, pointer, id: said.answer })
      continue
    }
    const candidates = known.get(key) ?? []
    found.set(key, candidates.length === 1 ? candidates[0]! : null)
    if (candidates.length > 1)
      machines.questions.push({
        pointer,
        question: say('Which sump is "{name}"? {count} go by that name.', { name, count: candidates.length }),
        choices: candidates.map(({ id }) => id),
      })
    if (candidates.length === 1 && said !== undefined)
      warnOfDifference(candidates[0]!, said.answer as NewSump, machines)
    if (candidates.length === 0) wanted.push({ key, name, pointer, said: said?.answer as NewSump | undefined })
  }
  makeNew(wanted, { found, machines, map, fluids, taken: new Set(book.sumps.map(({ id }) => id)) })
  pointAtIds(wanted, { found, machines, sumps: [...book.sumps, ...machines.added] })
  return machines
}

/** A name the book does not have: a new sump, or, with an id, another name for one. */
interface Wanted {
  key: string
  name: string
  pointer: string
  id?: string
  said?: NewSump | undefined
}

interface Making {
  found: Map<string, Sump | null>
  machines: Machines
  map: SheetMap
  fluids: readonly Fluid[]
  taken: Set<string>
}

const asked = {
  fluid: message('Which fluid is in {name}?'),
  fillVolume: message('How many litres are at the full mark, pumps stopped, of {name}?'),
  target: message('What concentration (percent) is the target of {name}?'),
  low: message('What is the lowest concentration (percent) allowed in {name}?'),
  high: message('What is the highest concentration (percent) allowed in {name}?'),
} as const

type Asked = keyof typeof asked

function makeNew(wanted: readonly Wanted[], making: Making): void {
  const { found, machines, map, fluids, taken } = making
  const missing = new Map<Asked, Wanted[]>()
  for (const one of wanted) {
    if (one.id !== undefined) continue
    const { id: _id, name: _name, ...shared } = map.newSumps ?? {}
    const given: NewSump = { ...shared, ...one.said }
    const fluid = given.fluid ?? (fluids.length === 1 ? fluids[0]!.id : undefined)
    const limits = fluids.find(({ id }) => id === fluid)?.limits?.concentration
    for (const field of Object.keys(asked) as Asked[]) {
      const known = field === 'fluid' ? fluid : (given[field] ?? (field === 'fillVolume' ? undefined : limits?.[field]))
      if (known === undefined && given[field] !== null) missing.set(field, [...(missing.get(field) ?? []), one])
    }
    const sump = sumpFrom(one, given, fluid, taken)
    found.set(one.key, sump)
    machines.added.push(sump)
    taken.add(sump.id)
    machines.faults.push(...faultsOfSump(one, sump, given, fluids))
  }
  if (machines.added.length > 0)
    machines.warnings.push(
      say('New in the book: {names}.', { names: machines.added.map(({ name }) => name).join(', ') }),
    )
  const byDefault =
    machines.added.length > 0 &&
    fluids.length === 1 &&
    wanted.some(({ said, id }) => id === undefined && (said?.fluid ?? map.newSumps?.fluid) === undefined)
  if (byDefault)
    machines.warnings.push(
      say('{name} is taken as the fluid of the new sumps: it is the only one known.', { name: fluids[0]!.name }),
    )
  machines.questions.push(...[...missing].flatMap(([field, ones]) => questionsFor(field, ones, fluids)))
}

/** The mark is every machine's own; what is usually the same for all is asked once where several lack it. */
function questionsFor(field: Asked, ones: readonly Wanted[], fluids: readonly Fluid[]): Question[] {
  if (field === 'fluid' && fluids.length === 0) return []
  const choices = field === 'fluid' ? { choices: fluids.map(({ id }) => id) } : {}
  const unknown = field === 'fluid' ? '' : ' (null: not known)'
  if (field === 'fillVolume' || ones.length === 1) {
    return ones.map(({ name, pointer }) => ({
      pointer: `${pointer}/${field}`,
      question: `${say(asked[field], { name })}${unknown}`,
      ...choices,
    }))
  }
  const names = ones.map(({ name }) => name).join(', ')
  return [{ pointer: `/newSumps/${field}`, question: `${say(asked[field], { name: names })}${unknown}`, ...choices }]
}

function sumpFrom({ name }: Wanted, given: NewSump, fluid: string | undefined, taken: ReadonlySet<string>): Sump {
  const band = Object.fromEntries(
    (['low', 'target', 'high'] as const).flatMap((end) => (typeof given[end] === 'number' ? [[end, given[end]]] : [])),
  )
  return {
    id: given.id ?? idFor(name, taken),
    name: given.name ?? name,
    machines: [name],
    fluid: fluid ?? '',
    ...(typeof given.fillVolume === 'number' ? { fillVolume: given.fillVolume } : {}),
    ...(typeof given.capacity === 'number' ? { capacity: given.capacity } : {}),
    ...(Object.keys(band).length > 0 ? { limits: { concentration: band } } : {}),
  }
}

/** "Mill 7" becomes `mill-7`; always the same id for a name, so that a second import finds it again. */
function idFor(name: string, taken: ReadonlySet<string>): string {
  const slug = slugOf(name)
  const mark = sha256(sameName(name)).slice(0, 8)
  if (slug === '') return `sump-${mark}`
  return taken.has(slug) ? `${slug}-${mark}` : slug
}

/** A name as an id: letters and digits of ASCII, hyphens between; '' where there is none. */
export const slugOf = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60)

function faultsOfSump({ pointer, name }: Wanted, sump: Sump, given: NewSump, fluids: readonly Fluid[]): Fault[] {
  if (given.fluid !== undefined && !fluids.some(({ id }) => id === given.fluid)) {
    return [
      {
        pointer: `${pointer}/fluid`,
        found: JSON.stringify(given.fluid),
        expected:
          fluids.length === 0
            ? say('a fluid of the book or of the map, which have none')
            : say('a fluid of the book or of the map: {fluids}', { fluids: fluids.map(({ id }) => id).join(', ') }),
      },
    ]
  }
  const parsed = thingKinds.sump.schema.safeParse({ ...sump, fluid: sump.fluid === '' ? 'open' : sump.fluid })
  return parsed.success
    ? []
    : faultsOf(parsed.error, sump, pointer).map((fault) => ({ ...fault, found: `${fault.found} (${name})` }))
}

/** Names that the map says are other names of a sump of the book or of a new one. */
function pointAtIds(
  wanted: readonly Wanted[],
  { found, machines, sumps }: { found: Map<string, Sump | null>; machines: Machines; sumps: readonly Sump[] },
): void {
  for (const { key, pointer, id } of wanted) {
    if (id === undefined) continue
    const sump = sumps.find((one) => one.id === id) ?? null
    found.set(key, sump)
    if (sump === null)
      machines.faults.push({
        pointer,
        found: JSON.stringify(id),
        expected:
          sumps.length === 0
            ? say('the id of a sump: the book has none')
            : say('the id of a sump: {ids}', { ids: sumps.map((one) => one.id).join(', ') }),
      })
  }
}

/** What the map says of a thing of the book otherwise than the book. */
export const sayNoChange = (name: string, fields: readonly string[]): string =>
  say('{name} is in the book already; {fields} of the map changes nothing there.', { name, fields: fields.join(', ') })

/** The book's own figures stand; what the map says otherwise changes nothing and is told. */
function warnOfDifference(sump: Sump, said: NewSump, { warnings }: Machines): void {
  const differing = (['fluid', 'fillVolume', 'capacity'] as const).filter(
    (field) => said[field] !== undefined && said[field] !== null && said[field] !== sump[field],
  )
  if (differing.length > 0) warnings.push(sayNoChange(sump.name, differing))
}
