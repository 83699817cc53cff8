import { expect, test } from 'vitest'
import type { Entry } from '../api/types.ts'
import { withPhoto } from './stop-entries.ts'

const entry = (kind: string) => ({ id: kind, kind }) as unknown as Entry
const named = (entries: Entry[]) =>
  entries.filter((one) => (one as { photo?: string }).photo === 'f00d').map(({ kind }) => kind)

test('a picture goes with what was seen, wherever that stands', () => {
  expect(named(withPhoto([entry('reading'), entry('observation'), entry('addition')], 'f00d'))).toEqual(['observation'])
})

test('where nothing was seen it goes with the first entry, and never with two', () => {
  expect(named(withPhoto([entry('skip'), entry('reading')], 'f00d'))).toEqual(['skip'])
})

test('without a picture the entries stay as they are', () => {
  const entries = [entry('reading'), entry('observation')]
  expect(withPhoto(entries, null)).toEqual(entries)
})
