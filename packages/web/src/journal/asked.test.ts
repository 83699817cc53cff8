import { expect, test } from 'vitest'
import { askedIn, askedNothing, asksForSome, journalAddress, questionOf, sayAsked } from './asked.ts'

const say = { sump: (id: string) => `Mill ${id}`, day: (day: string) => `day ${day.slice(8)}` }

test('what an address asks for comes back as the same address', () => {
  const address = '/journal?sump=m1&what=pours&by=M+%26+K&from=2026-03-01&to=2026-03-31&words=foam+%26+lid'
  const asked = askedIn(address.slice('/journal'.length))
  expect(asked).toEqual({
    sump: 'm1',
    what: 'pours',
    by: 'M & K',
    from: '2026-03-01',
    to: '2026-03-31',
    words: 'foam & lid',
  })
  expect(journalAddress(asked)).toBe(address)
  expect(journalAddress(askedNothing)).toBe('/journal')
})

test('what is no day and no group of kinds is passed over', () => {
  expect(askedIn('?from=yesterday&to=2026-13-01&what=toString&sump=m1')).toEqual({ ...askedNothing, sump: 'm1' })
  expect(asksForSome(askedIn('?what=constructor'))).toBe(false)
  expect(asksForSome(askedIn('?by=MK'))).toBe(true)
})

test('a group is asked for by the kinds it stands for', () => {
  expect(questionOf({ ...askedNothing, what: 'pours', words: 'a b' })).toBe('words=a+b&kind=addition%2Ccharge')
  expect(questionOf(askedNothing)).toBe('')
})

test.each([
  [{}, ''],
  [{ sump: '1', words: 'rust' }, 'of Mill 1, with “rust”'],
  [{ what: 'pours', by: 'MK' } as const, 'pours and fresh charges, by MK'],
  [{ from: '2026-03-01', to: '2026-03-31' }, 'from day 01 to day 31'],
  [{ from: '2026-03-01', to: '2026-03-01' }, 'on day 01'],
  [{ from: '2026-03-01' }, 'since day 01'],
  [{ to: '2026-03-31' }, 'up to day 31'],
])('%o is said as “%s”', (asked, words) => {
  expect(sayAsked({ ...askedNothing, ...asked }, say)).toBe(words)
})
