import { OutOfRange, type Reader } from '@sumpbook/fluid'
import type { z } from 'zod'
import { type Fault, refusal } from '../errors.ts'
import { faultsOf, pointerOf, sayFound } from '../schema/faults.ts'

/** What every result carries beside its figures. */
export interface Remarks {
  /** What is good to know, a sentence each. */
  notes: string[]
  /** What to mind before acting on it. */
  cautions?: string[]
}

/** A computation by name, for the command line and the API: plain JSON in, plain JSON out. */
export interface Calculation<Input = unknown, Output extends Remarks = Remarks> {
  name: string
  /** What it works out, in one line. */
  summary: string
  /** Unknown fields are refused. */
  input: z.ZodType<Input>
  run(input: Input): Output
  /** The result for people, a sentence a line. */
  say(output: Output, reader: Reader, input: Input): string[]
}

/** Keeps the types of one calculation together. */
export const calculation = <Input, Output extends Remarks>(definition: Calculation<Input, Output>) => definition

/** No answer exists for what was asked; says which figures stand against each other. */
export class NoAnswer extends Error {
  readonly faults: readonly Fault[]

  constructor(faults: readonly Fault[]) {
    super('no answer')
    this.faults = faults
  }
}

/** What a calculation was asked and what it answers. */
export interface Answered<Input, Output> {
  input: Input
  output: Output
}

/**
 * Runs a calculation on what came in.
 *
 * @throws {BookError} `refused-input` naming each field, what was found and what was expected
 */
export function runCalculation<Input, Output extends Remarks>(
  of: Calculation<Input, Output>,
  given: unknown,
): Answered<Input, Output> {
  const parsed = of.input.safeParse(given)
  if (!parsed.success) throw refusal(faultsOf(parsed.error, given), `input of ${of.name}`)
  const beyond = beyondAllMeasure(given)
  if (beyond.length > 0) throw refusal(beyond, `input of ${of.name}`)
  try {
    return { input: parsed.data, output: of.run(parsed.data) }
  } catch (error) {
    if (error instanceof OutOfRange) throw refusal([faultOf(error)], `input of ${of.name}`)
    if (error instanceof NoAnswer) throw refusal(error.faults, `input of ${of.name}`)
    throw error
  }
}

/** No figure of a shop is larger than the one or, 0 aside, smaller than the other; sums of such figures stay sums of figures. */
const [largest, smallest] = [1e12, 1e-12]

function beyondAllMeasure(value: unknown, pointer = ''): Fault[] {
  if (typeof value === 'number') {
    const size = Math.abs(value)
    if (value === 0 || (size <= largest && size >= smallest)) return []
    return [{ pointer, found: sayFound(value), expected: `0, or a size between ${smallest} and ${largest}` }]
  }
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => beyondAllMeasure(inner, `${pointer}${pointerOf([key])}`))
}

/** `band.low` is `/band/low`: the computation names quantities as the input names them. */
const faultOf = ({ quantity, found, expected }: OutOfRange): Fault => ({
  pointer: `/${quantity.replaceAll('.', '/')}`,
  found: sayFound(found),
  expected,
})
