import { expect, test } from 'vitest'
import { clearFromLocalStorage, leftInLocalStorage } from './local-outbox.ts'

const id = '01900000-0000-7000-8000-000000000001'
const entry = { id, at: '2026-11-25T07:00:00Z', kind: 'reading', sump: 's1', brix: 3 }

function storage(texts: Record<string, string>) {
  const kept = new Map(Object.entries(texts))
  return {
    kept,
    getItem: (key: string) => kept.get(key) ?? null,
    removeItem: (key: string) => void kept.delete(key),
    key: (i: number) => [...kept.keys()][i] ?? null,
    get length() {
      return kept.size
    },
  }
}

test('what waits in the old place is found, with why it was refused; what is nobody’s or cannot be read stays there', () => {
  const old = storage({
    'sumpbook.outbox.1': '{broken',
    'sumpbook.walk': '{}',
    [`sumpbook.outbox.${id}`]: JSON.stringify({ entry, label: 'Mill 7: 3 °Brix', problem: { title: 'no' } }),
  })
  const left = leftInLocalStorage(old)
  expect(left).toEqual([{ entry, label: 'Mill 7: 3 °Brix', problem: { title: 'no' }, fault: null, taken: null }])
  clearFromLocalStorage(old, left)
  expect([...old.kept.keys()]).toEqual(['sumpbook.outbox.1', 'sumpbook.walk'])
})
