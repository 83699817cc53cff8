import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'
import { readStep } from './answer-types.ts'
import { readHandovers } from './read-handovers.ts'

const note = (n: number, at: string, text: string) => ({
  ...{ id: testId(n), at, kind: 'handover', about: { kind: 'shop' }, text },
})

async function handoversOf(entries: unknown[]) {
  const store = await emptyStore()
  const sump = smallShop().sumps[0]!
  const sumps = [sump, { ...sump, id: 's2', name: 'Mill 2' }]
  await importBookFile(store, JSON.stringify(smallShop({ entries, sumps })), testNow)
  return openBook(store, () => testNow).ask((parts, at) => readHandovers(parts, { at }))
}

// The shift began at six in Berlin, five in Greenwich.
test('the note that is proposed says what this shift did, read, and leaves open', async () => {
  const { proposal, shift } = await handoversOf([
    testReading(1, { brix: 3.5, volume: 162 }),
    {
      id: testId(2),
      at: '2026-03-03T09:00:00Z',
      kind: 'addition',
      sump: 's1',
      volume: 38,
      strength: 18.2,
      water: 'di',
    },
    { id: testId(3), at: '2026-03-02T09:00:00Z', kind: 'drawoff', sump: 's2', volume: 20 },
  ])
  expect(shift.began).toBe('2026-03-03T05:00:00.000Z')
  expect(proposal.done).toEqual([expect.stringMatching(/^Mill 1: Added 38 L/)])
  expect(proposal.read).toEqual(['Mill 1'])
  expect(proposal.open).toEqual([expect.stringMatching(/^Mill 2: Read/)])
  expect(proposal.text).toMatch(/^Done: Mill 1: Added 38 L.*\nRead: 1 sump\.\nStill open: Mill 2: Read/)
})

test('what was put off is named with its reason and its end', async () => {
  const snooze = {
    ...{ id: testId(5), at: '2026-03-03T08:45:00Z', kind: 'snooze', sump: 's1', what: 'lean:s1' },
    ...{ why: 'concentrate comes on Thursday', until: '2026-03-05' },
  }
  const { proposal } = await handoversOf([testReading(1, { brix: 3.5, volume: 162 }), snooze])
  expect(proposal.putOff).toEqual([
    expect.stringMatching(/^Mill 1: Add .*, until Thursday: concentrate comes on Thursday$/),
  ])
  expect(proposal.open.join(' ')).not.toContain('Mill 1')
})

test('the last notes stand youngest first, with who has read them; withdrawn ones and those of long ago do not', async () => {
  const { notes } = await handoversOf([
    note(1, '2026-02-20T22:00:00Z', 'long ago'),
    note(2, '2026-03-01T22:00:00Z', 'first'),
    note(3, '2026-03-02T22:00:00Z', 'second'),
    note(4, '2026-03-02T23:00:00Z', 'withdrawn'),
    { id: testId(5), at: '2026-03-02T23:30:00Z', kind: 'void', entry: testId(4) },
    {
      ...{ id: testId(6), at: '2026-03-03T06:00:00Z', kind: 'signoff', about: { kind: 'shop' } },
      ...{ step: readStep(testId(3)), by: 'p1' },
    },
  ])
  expect(notes).toMatchObject([
    { text: 'second', readBy: [{ entry: testId(6), by: 'p1' }] },
    { text: 'first', readBy: [] },
  ])
})
