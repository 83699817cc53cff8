import { expect, test } from 'vitest'
import { agenda } from './agenda.ts'

test('things happen in order of time, at one time as they were put down, and no later than asked', () => {
  const happened: string[] = []
  const { put, runTo } = agenda()
  put(20, () => happened.push('noon'))
  put(10, () => {
    happened.push('morning')
    put(15, () => happened.push('late morning'))
  })
  put(20, () => happened.push('noon again'))
  put(21, () => happened.push('too late'))
  runTo(20)
  expect(happened).toEqual(['morning', 'late morning', 'noon', 'noon again'])
})
