import { startOfDay } from '../journal/calendar.ts'
import { utc } from '../journal/order.ts'
import type { Setup } from '../schema/entries/index.ts'
import {
  type Container,
  type Fluid,
  type Instrument,
  type Meter,
  type Mixer,
  type Shop,
  type Sump,
  shop as shopSchema,
  type ThingKind,
  thingKinds,
  type WasteContainer,
  type Water,
} from '../schema/things/index.ts'
import { lay, settled } from './lay.ts'

/** What a shop is where it does not say: named nothing, in UTC, metric, Monday to Friday. */
export const shopDefaults = { name: '', timeZone: 'UTC', units: 'metric', currency: 'EUR' } as const

/** A thing as it first came in, before any set-up. */
export interface BaseThing {
  kind: string
  id: string
  body: Record<string, unknown>
}

/** The things of a shop at one instant. */
export interface Things {
  /** The shop as it was told, without defaults. */
  shopAsTold: Shop
  shop: Shop & { name: string; timeZone: string; units: 'us' | 'metric' | 'imperial'; currency: string }
  fluid: ReadonlyMap<string, Fluid>
  water: ReadonlyMap<string, Water>
  sump: ReadonlyMap<string, Sump>
  container: ReadonlyMap<string, Container>
  mixer: ReadonlyMap<string, Mixer>
  instrument: ReadonlyMap<string, Instrument>
  meter: ReadonlyMap<string, Meter>
  waste: ReadonlyMap<string, WasteContainer>
}

/** How a thing came to be what it is: fields by the time from which they hold. */
export interface ThingHistory {
  /** The instants (UTC text, rising) at which a thing begins to be other than before. */
  readonly changes: readonly string[]
  /** As things stand at an instant (UTC text), or after every change where none is given. */
  at(instant?: string): Things
}

type Fields = Record<string, unknown>
interface Change {
  from: string
  rank: string
  changes: Fields
  was: Fields
}
interface Kept {
  kind: string
  id: string
  base: Fields
  changes: Change[]
}

/**
 * Folds the set-up entries that stand over the things as they first came in. Every field has the value of its youngest
 * change at the instant asked for, in order of (from, at, id). Before its first change a field is what that change says it
 * `was`, else what it was when the thing came in. A thing that lacks a required field is not there yet.
 */
export function thingHistory(base: readonly BaseThing[], setups: readonly Setup[]): ThingHistory {
  const shopBase = base.find(({ kind }) => kind === 'shop')?.body ?? {}
  const timeZone = zoneOf(shopBase, setups)
  const kept = new Map<string, Kept>()
  for (const { kind, id, body } of base) kept.set(keyOf(kind, id), { kind, id, base: body, changes: [] })
  for (const setup of setups) {
    const { kind, id = 'shop' } = setup.about
    const key = keyOf(kind, id)
    if (!kept.has(key)) kept.set(key, { kind, id, base: {}, changes: [] })
    kept.get(key)!.changes.push(changeOf(setup, timeZone))
  }
  for (const { changes } of kept.values()) changes.sort((a, b) => compare(a.from, b.from) || compare(a.rank, b.rank))
  return cached([...kept.values()])
}

/** Things change only where a change begins to hold: one answer serves every instant between two of them. */
function cached(kept: readonly Kept[]): ThingHistory {
  const changes = [...new Set(kept.flatMap((thing) => thing.changes.map(({ from }) => from)))].sort()
  const answers = new Map<number, Things>()
  return {
    changes,
    at: (instant) => {
      const next = instant === undefined ? -1 : changes.findIndex((from) => from > instant)
      const held = next === -1 ? changes.length : next
      const known = answers.get(held)
      if (known !== undefined) return known
      const things = thingsAt(kept, held === 0 ? '' : changes[held - 1])
      answers.set(held, things)
      return things
    },
  }
}

const keyOf = (kind: string, id: string) => (kind === 'shop' ? 'shop' : `${kind}/${id}`)
const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

function changeOf({ from, at, id, changes, was = {} }: Setup, timeZone: string): Change {
  const since = from === undefined ? utc(at) : from.includes('T') ? utc(from) : startOfDay(from, timeZone)
  return { from: since, rank: `${utc(at)} ${id}`, changes, was }
}

/** The zone in which days begin: the last one the shop was given. */
function zoneOf(base: Fields, setups: readonly Setup[]): string {
  const given = setups
    .filter(({ about, changes }) => about.kind === 'shop' && typeof changes.timeZone === 'string')
    .toSorted((a, b) => compare(utc(a.at), utc(b.at)))
    .map(({ changes }) => changes.timeZone as string)
  return given.at(-1) ?? (base.timeZone as string | undefined) ?? shopDefaults.timeZone
}

function thingsAt(kept: readonly Kept[], instant: string | undefined): Things {
  const of = <K extends ThingKind>(kind: K) => {
    const things = kept
      .filter((thing) => thing.kind === kind)
      .flatMap((thing) => {
        const parsed = thingKinds[kind].schema.safeParse({ ...fieldsAt(thing, instant), id: thing.id })
        return parsed.success ? [[thing.id, parsed.data] as const] : []
      })
    return new Map(things)
  }
  const shop = shopSchema.parse(fieldsAt(kept.find(({ kind }) => kind === 'shop') ?? noShop, instant))
  return {
    shopAsTold: shop,
    shop: { ...shopDefaults, ...shop } as Things['shop'],
    fluid: of('fluid') as Things['fluid'],
    water: of('water') as Things['water'],
    sump: of('sump') as Things['sump'],
    container: of('container') as Things['container'],
    mixer: of('mixer') as Things['mixer'],
    instrument: of('instrument') as Things['instrument'],
    meter: of('meter') as Things['meter'],
    waste: of('waste') as Things['waste'],
  }
}

const noShop: Kept = { kind: 'shop', id: 'shop', base: {}, changes: [] }

/**
 * A thing's fields at an instant, or after every change. What nobody knew before the first change has that change's
 * value (a mark measured today is the best that is known of yesterday), unless the change says what it `was`; null takes
 * a field away.
 */
function fieldsAt({ base, changes }: Pick<Kept, 'base' | 'changes'>, instant?: string): Fields {
  const fields: Fields = {}
  for (const { changes: values } of changes.toReversed()) lay(fields, values)
  lay(fields, base)
  for (const { was } of changes.toReversed()) lay(fields, was)
  for (const { from, changes: values } of changes) {
    if (instant === undefined || from <= instant) lay(fields, values)
  }
  return settled(fields)
}
