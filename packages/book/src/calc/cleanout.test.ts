import { expect, test } from 'vitest'
import { BookError } from '../errors.ts'
import { calculations, runCalculation } from './index.ts'

const asked = { volume: 200, heldBack: 10, target: 8 }
const run = (more: Record<string, unknown> = {}) => {
  const { output } = runCalculation(calculations.get('cleanout')!, { ...asked, ...more })
  return output as unknown as {
    steps: { step: string; text: string; volume: number; concentrate: number; water: number; cautions: string[] }[]
    waste: number
    downtimeHours: number
    cost: number
    notes: string[]
    cautions: string[]
  }
}
const faultsOf = (more: Record<string, unknown>) => {
  try {
    run(more)
  } catch (error) {
    if (error instanceof BookError) return error.faults
    throw error
  }
  return []
}

test('steps carry text, litres, and what is poured; waste, hours and cost are of the whole', () => {
  const { steps, waste, cost, downtimeHours } = run({ prices: { waste: 1 } })
  expect(steps.map(({ step }) => step).slice(0, 3)).toEqual(['ready', 'skim', 'lock-out'])
  expect(steps.find(({ step }) => step === 'cleaner')).toMatchObject({ volume: 190, concentrate: 3.8, water: 186.2 })
  expect(steps.find(({ step }) => step === 'drain')).toMatchObject({ volume: 190, concentrate: 0, water: 0 })
  expect(waste).toBe(460)
  expect(cost).toBeCloseTo(460, 9)
  expect(downtimeHours).toBeGreaterThan(4)
})

test('the water is a name or what is known of it', () => {
  expect(run({ water: 'tap water' }).steps.find(({ step }) => step === 'charge')!.text).toContain('of tap water')
  const known = { hardness: { low: 100, high: 200 } }
  expect(run({ ...known, water: { hardness: 150 } }).notes.join(' ')).toContain('inside its limits')
  expect(run({ ...known, water: { hardness: 50 } }).notes.join(' ')).toContain('outside its limits')
  expect(run({ water: { kind: 'softened' } }).notes.join(' ')).toContain('Take another')
})

test('every caution of a step stands among the cautions of the whole, once', () => {
  const { steps, cautions } = run()
  expect(new Set(cautions)).toEqual(new Set(steps.flatMap((step) => step.cautions)))
  expect(new Set(cautions).size).toBe(cautions.length)
})

test('a target out of reach, a heel as large as the sump and an unknown price are refused at their fields', () => {
  expect(faultsOf({ strongest: 5 })).toMatchObject([{ pointer: '/target', found: '8' }])
  expect(faultsOf({ heldBack: 200 })).toMatchObject([{ pointer: '/heldBack' }])
  expect(faultsOf({ prices: { fluid: 3 } })).toMatchObject([{ pointer: '/prices/fluid' }])
})
