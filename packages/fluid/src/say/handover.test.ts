import { expect, test } from 'vitest'
import { sayHandoverNote, sayReadBy } from './handover.ts'

const nothing = { done: [], read: [], open: [], putOff: [], results: [] }

test('a note has a line for each part there is', () => {
  const note = sayHandoverNote({
    done: ['Mill 3: Added 38 L at 18 %'],
    read: ['Mill 3', 'Mill 4'],
    open: ['Mill 5: Add 12 L at 8 %', 'Saw: Read the level first'],
    putOff: ['Mill 7: Read again, until 6 March: pump is out'],
    results: ['Read the dip slide of Mill 3'],
  })
  expect(note.split('\n')).toEqual([
    'Done: Mill 3: Added 38 L at 18 %.',
    'Read: 2 sumps.',
    'Still open: Mill 5: Add 12 L at 8 %; Saw: Read the level first.',
    'Put off: Mill 7: Read again, until 6 March: pump is out.',
    'To be read: Read the dip slide of Mill 3.',
  ])
})

test('a shift that leaves nothing says so', () => {
  expect(sayHandoverNote(nothing)).toBe('Nothing is open.')
})

test('of a long part eight lines are written out', () => {
  const lines = (count: number) =>
    sayHandoverNote({ ...nothing, open: Array.from({ length: count }, (_, n) => `s${n}`) })
  expect(lines(9)).toContain('s7; s8.')
  expect(lines(10)).toContain('s7; and 2 more.')
})

test('who has read it is said by name', () => {
  expect([sayReadBy([]), sayReadBy(['Ana']), sayReadBy(['Ana', 'Ben'])]).toEqual([
    '',
    'Read by Ana.',
    'Read by Ana and Ben.',
  ])
})
