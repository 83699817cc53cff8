import fc from 'fast-check'
import { expect, test } from 'vitest'
import { BookError } from '../errors.ts'
import { exampleInputs } from './examples.ts'
import { calculations, runCalculation } from './index.ts'

const wild = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 100, 1e-300, 1e-12, 1e12, 1e300, -1e300, 0.5),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
)

test.each([...calculations.keys()])(
  '%s: whatever the figures, an answer of finite figures or a refusal by field',
  (name) => {
    const calculation = calculations.get(name)!
    const good = exampleInputs[name]
    expect(unfinite(runCalculation(calculation, good).output)).toEqual([])
    const places = numbersIn(good)
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(places.length - 1), wild), { minLength: 1, maxLength: 3 }), (changes) => {
        const input = structuredClone(good)
        for (const [place, value] of changes) setAt(input, places[place]!, value)
        try {
          const { output } = runCalculation(calculation, input)
          expect(unfinite(output)).toEqual([])
        } catch (error) {
          if (!(error instanceof BookError)) throw error
          expect(error.faults.length).toBeGreaterThan(0)
        }
      }),
      { numRuns: 3000 },
    )
  },
)

type Path = (string | number)[]

function numbersIn(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, [...path, key]))
}

function setAt(value: unknown, path: Path, number: number): void {
  const [last, ...before] = path.toReversed()
  const parent = before.toReversed().reduce((inner, key) => (inner as Record<string, unknown>)[key], value)
  ;(parent as Record<string, unknown>)[last!] = number
}

/** Places in an answer that hold NaN or infinity. */
function unfinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => unfinite(inner, `${path}/${key}`))
}
