import { expect, test } from 'vitest'
import { nothingTested, padTapped, readTested, stripFor, type Tested, testedEntries } from './tested.ts'

const stamp = { at: '2026-03-03T08:00:00Z', recordedAt: '2026-03-03T08:00:00Z', newId: () => 'id' }
const tested = (fields: Partial<Tested>): Tested => ({ ...nothingTested, ...fields })
const pads = [0, 5, 10, 25, 50, 80]

test.each([
  ['a pad', 10, '', '10'],
  ['its neighbour as well: between the two', 25, '10', '10-25'],
  ['the neighbour below', 5, '10', '5-10'],
  ['one further away in its place', 50, '10', '50'],
  ['the same again takes it back', 10, '10', ''],
  ['out of a class to one pad', 50, '10-25', '50'],
  ['a typed figure gives way', 25, '12', '25'],
])('%s', (_, pad, text, after) => {
  expect(padTapped(pad, text, pads)).toBe(after)
})

test('a pH is read with either sign, and on its way is no fault', () => {
  expect(readTested(tested({ texts: { ph: '9,2' } }))).toMatchObject({ found: { ph: 9.2 }, questions: [] })
  expect(readTested(tested({ texts: { ph: '9.' } })).faults).toEqual({})
  expect(readTested(tested({ texts: { ph: '15' } })).faults.ph).toMatchObject({ found: '15' })
})

test('what no coolant shows is asked once, for that text alone', () => {
  const asked = tested({ texts: { ph: '4.2' } })
  expect(readTested(asked).questions).toMatchObject([{ key: 'ph', text: '4.2' }])
  expect(readTested({ ...asked, confirmed: { ph: '4.2' } }).questions).toEqual([])
  expect(readTested({ ...asked, texts: { ph: '4.1' }, confirmed: { ph: '4.2' } }).questions).toHaveLength(1)
  expect(readTested(tested({ texts: { ph: '6' } })).questions).toEqual([])
  expect(readTested(tested({ texts: { ph: '11' } })).questions).toEqual([])
})

test('each strip has a reading of its own, what no strip showed another, and a slide waits', () => {
  const entries = testedEntries(
    tested({
      texts: { ph: '4.2', nitrite: '10-25', hardness: '250' },
      strips: { nitrite: 'n' },
      taken: ['dip slide'],
      confirmed: { ph: '4.2' },
    }),
    's1',
    stamp,
  )
  expect(entries).toMatchObject([
    { kind: 'reading', ph: 4.2, hardness: 250, typed: { ph: '4.2', hardness: '250 ppm' }, confirmed: ['/ph'] },
    { kind: 'reading', nitrite: { low: 10, high: 25 }, instrument: 'n', typed: { nitrite: '10-25 mg/L' } },
    { kind: 'reading', pending: true, method: 'dip slide' },
  ])
  expect(entries[0]).not.toHaveProperty('instrument')
  expect(testedEntries(nothingTested, 's1', stamp)).toEqual([])
})

test('a strip shows what its name says, and only with pads', () => {
  const instruments = [
    { id: 'm', name: 'pH pocket meter', kind: 'ph-meter' },
    { id: 'p', name: 'pH strips', pads: [7, 8, 9] },
    { id: 'h', name: 'Hardness strips', pads: [0, 25] },
  ]
  expect(stripFor('ph', instruments)?.id).toBe('p')
  expect(stripFor('hardness', instruments)?.pads).toEqual([0, 25])
  expect(stripFor('nitrite', instruments)).toBe(null)
})

test('strips are known by their kind, or by their name in any language of the app', () => {
  const named = (name: string, kind = 'strip') => [{ id: 'x', name, kind, pads: [0, 5] }]
  expect(stripFor('nitrite', named('Röhrchen blau', 'strip-nitrite'))?.id).toBe('x')
  expect(stripFor('nitrite', named('Nitrit-Streifen'))?.id).toBe('x')
  expect(stripFor('hardness', named('Härtestreifen'))?.id).toBe('x')
  expect(stripFor('hardness', named('Tiras de dureza'))?.id).toBe('x')
  expect(stripFor('nitrite', named('Nitratstreifen'))).toBe(null)
})
