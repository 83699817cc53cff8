import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { useCalendar } from '../api/guidance.ts'
import { type DueHere, dueHere } from './due-here.ts'
import { hasTests, type Tested, type TestKey, testFields } from './tested.ts'

/** Level first, three looks, what is due, then the refractometer. */
export type Step = 'level' | 'signs' | 'tests' | 'brix'

/** Where somebody is at a stop, and the way on from there. */
export function useSteps(sump: string, tested: Tested) {
  const [step, setStep] = useState<Step>('level')
  const [test, setTest] = useState<TestKey | null>(null)
  const levelField = useRef<HTMLInputElement>(null)
  const brixField = useRef<HTMLInputElement>(null)
  // Before a thumb can be anywhere: a field that takes the focus later would take the step back with it.
  useLayoutEffect(() => levelField.current?.focus({ preventScroll: true }), [])
  const found = useDueTests(sump)
  const shown = useRef<DueHere | null>(null)
  shown.current = dueHere(shown.current, step, found, hasTests(tested))
  const { due, isBelow } = shown.current
  const isWanted = (key: TestKey) => found.some((line) => line.test === key) && (tested.texts[key] ?? '') === ''
  const isTestLeft =
    testFields.some(({ key }) => isWanted(key)) ||
    (found.some((line) => line.test === 'bacteria') && !tested.taken.includes('dip slide'))
  const afterLooks: Step = isTestLeft ? 'tests' : 'brix'
  return {
    step,
    setStep,
    /** The test whose figure the keys type. */
    test,
    setTest,
    levelField,
    brixField,
    due,
    isTestLeft,
    // Where nothing is due the recipe has the room; other tests are a tap away.
    hasTestsRow: due.length > 0 || hasTests(tested) || step === 'tests',
    /** Whether the row of tests stands below the refractometer. */
    isTestsBelow: isBelow,
    afterLooks,
    next: step === 'level' ? ('signs' as const) : step === 'signs' ? afterLooks : ('brix' as const),
    goTo(next: Step) {
      setStep(next)
      const field = next === 'level' ? levelField : next === 'brix' ? brixField : null
      field?.current?.focus({ preventScroll: true })
      // A field that keeps the focus gets it again when the phone wakes, and would take the step back with it.
      if (field === null) for (const left of [levelField, brixField]) left.current?.blur()
      if (next === 'tests') setTest(testFields.find(({ key }) => isWanted(key))?.key ?? null)
    },
  }
}

/** What is due here beside strength and the look, which every stop has anyway. */
function useDueTests(sump: string) {
  const { data } = useCalendar()
  const tests = data?.sumps.find((line) => line.sump === sump)?.tests ?? []
  return tests.filter(({ test, isDue }) => isDue && test !== 'senses' && test !== 'concentration')
}
