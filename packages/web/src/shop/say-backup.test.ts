import { expect, test } from 'vitest'
import { type Backups, isOverdue, sayBytes, sayMade, sayTried } from './say-backup.ts'

const reader = { timeZone: 'Europe/Berlin', now: '2026-11-25T12:00:00Z' }
const made = { at: '2026-11-25T06:42:00Z', entries: 4120, attachments: 12, damagedAttachments: 0, bytes: 1_400_000 }
const of = (more: Partial<Backups>): Backups => ({ made: null, tried: null, running: false, ...more })

test('a backup is said with its age and what is in it', () => {
  expect(sayMade(of({ made }), reader)).toBe('Last backed up today 07:42: 4120 entries, 12 attachments, 1.4 MB.')
  expect(sayMade(of({ made: { ...made, entries: 1, attachments: 0, damagedAttachments: 1 } }), reader)).toBe(
    'Last backed up today 07:42: 1 entry, 1.4 MB. 1 attachment had to be left out: damaged on the disk.',
  )
  expect(sayMade(of({}), reader)).toBe('Not backed up yet by this program.')
})

test.each([
  ['made two days ago', '2026-11-23T06:42:00Z', false],
  ['made three days ago', '2026-11-22T06:42:00Z', true],
])('a backup %s is overdue: %s %s', (_, at, overdue) => {
  expect(isOverdue(of({ made: { ...made, at } }), reader)).toBe(overdue)
})

test('a book without a backup is overdue', () => {
  expect(isOverdue(of({}), reader)).toBe(true)
})

test('a drill is said as it went', () => {
  const at = '2026-11-24T22:30:00Z'
  expect(sayTried(of({ tried: { at, good: true, seconds: 2.345, error: null } }), reader)).toBe(
    'Restored, walked and compared for a trial yesterday 23:30 in 2.3 s: it holds.',
  )
  expect(sayTried(of({ tried: { at, good: false, seconds: null, error: 'The chain does not hold.' } }), reader)).toBe(
    'The drill went wrong yesterday 23:30: The chain does not hold.',
  )
  expect(sayTried(of({}), reader)).toBe('Whether a backup can be restored was not tried yet.')
})

test.each([
  [999, '999 bytes'],
  [1000, '1.0 KB'],
  [45_300, '45 KB'],
  [1_400_000, '1.4 MB'],
  [2_000_000_000, '2.0 GB'],
])('%s bytes are %s', (bytes, said) => {
  expect(sayBytes(bytes)).toBe(said)
})
