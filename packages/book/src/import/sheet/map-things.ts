import { say } from '@sumpbook/fluid'
import type { Fault } from '../../errors.ts'
import { faultsOf } from '../../schema/faults.ts'
import { type Fluid, thingKinds, type Water } from '../../schema/things/index.ts'
import type { SheetBook } from '../sheet-book.ts'
import type { Question, SheetMap } from '../sheet-types.ts'
import { sayNoChange, slugOf } from './machines.ts'

/** Fluids and waters of the book and the map together. */
export interface MapThings {
  fluids: Fluid[]
  waters: Water[]
  /** Those the book does not have yet. */
  added: { kind: 'fluid' | 'water'; thing: Record<string, unknown> }[]
  questions: Question[]
  faults: Fault[]
  warnings: string[]
}

type Fields = Record<string, unknown>

/** Reads the fluids and waters of a map. A null in them says "unknown" and is left out; an id may be made from the name. */
export function thingsOfMap(
  { fluids = [], waters = [] }: SheetMap,
  book: Pick<SheetBook, 'fluids' | 'waters'>,
): MapThings {
  const things: MapThings = {
    fluids: [...book.fluids],
    waters: [...book.waters],
    added: [],
    questions: [],
    faults: [],
    warnings: [],
  }
  for (const [i, given] of fluids.entries()) take('fluid', given, `/fluids/${i}`, things, things.fluids)
  for (const [i, given] of waters.entries()) take('water', given, `/waters/${i}`, things, things.waters)
  return things
}

/**
 * What the strengths of a sheet's sumps need of their fluids. A fluid of the map without a factor is asked for one; one
 * of the book is only warned of, since what the book holds is changed there.
 */
export function askForFactors(things: MapThings, { fluids: given = [] }: SheetMap, used: ReadonlySet<string>): void {
  if (things.fluids.length === 0) {
    things.questions.push({
      pointer: '/fluids/0/name',
      question: say('Which fluid is in these machines? Neither the book nor the map has one.'),
    })
    things.questions.push({
      pointer: '/fluids/0/brixFactor',
      question: `${say('What is its factor, percent per °Brix, by its sheet?')} (null: not known)`,
    })
    return
  }
  for (const fluid of things.fluids.filter(({ id }) => used.has(id))) {
    const { id, name, brixFactor, brixChart, factors } = fluid
    if (fluid.class === 'straight-oil' || brixFactor !== undefined || brixChart !== undefined || factors !== undefined)
      continue
    const i = given.findIndex((one) => idOf(one) === id)
    if (i === -1)
      things.warnings.push(
        say('{name} has no factor and no chart in the book: its °Brix cannot become a strength.', { name }),
      )
    else if (given[i]!.brixFactor !== null)
      things.questions.push({
        pointer: `/fluids/${i}/brixFactor`,
        question: `${say('What is the factor of {name}, percent per °Brix, by its sheet?', { name })} (null: not known)`,
      })
  }
}

const idOf = ({ id, name }: Fields) => id ?? (typeof name === 'string' ? slugOf(name) : undefined)

function take<T extends { id: string; name: string }>(
  kind: 'fluid' | 'water',
  given: Fields,
  pointer: string,
  things: MapThings,
  known: T[],
): void {
  const thing = Object.fromEntries(
    Object.entries({ ...given, id: idOf(given) }).filter(([, value]) => value !== null && value !== undefined),
  )
  const parsed = thingKinds[kind].schema.safeParse(thing)
  if (!parsed.success) {
    things.faults.push(...faultsOf(parsed.error, thing, pointer))
    return
  }
  const there = known.find(({ id }) => id === thing.id)
  if (there === undefined) {
    known.push(parsed.data as unknown as T)
    things.added.push({ kind, thing })
    return
  }
  const differing = Object.keys(thing).filter(
    (field) => JSON.stringify(thing[field]) !== JSON.stringify((there as Fields)[field]),
  )
  if (differing.length > 0) things.warnings.push(sayNoChange(there.name, differing))
}
