import { BookError, inMemory, openBook, openSqliteStore, sourceOf } from '@sumpbook/book'
import { type Dice, mutated, tokensOf } from '../mutate.ts'
import type { FuzzedParser } from '../parser.ts'

const at = '2026-03-03T09:00:00Z'
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const small = {
  format: 'sumpbook-book/1',
  shop: {
    name: 'Test works',
    timeZone: 'Europe/Berlin',
    units: 'metric',
    workDays: [1, 2, 3],
    shutdowns: [{ from: '2026-12-24', to: '2027-01-01' }],
  },
  fluids: [
    {
      id: 'f1',
      name: 'Semi 1',
      brixChart: [
        [1, 1.6],
        [4, 6],
      ],
      limits: { concentration: { low: 6, target: 8, high: 10 } },
    },
  ],
  waters: [{ id: 'tap', name: 'Tap', kind: 'tap', hardness: 220 }],
  sumps: [
    {
      id: 's1',
      name: 'Mill 1',
      fluid: 'f1',
      fillVolume: 200,
      dipTable: [
        [0, 0],
        [400, 200],
      ],
    },
  ],
  meters: [{ id: 'm1', name: 'Hose', litresPerCount: 10, sump: 's1' }],
  entries: [
    { id: id(1), at, kind: 'charge', sump: 's1', volume: 200, strength: 8, water: 'tap' },
    { id: id(2), at, kind: 'reading', sump: 's1', brix: 5, hardness: { low: 25, high: 50 }, typed: { brix: '5' } },
    { id: id(3), at, kind: 'addition', sump: 's1', meter: { id: 'm1', count: 12 } },
    { id: id(4), at, kind: 'setup', about: { kind: 'sump', id: 's1' }, changes: { fillVolume: 210 } },
    { id: id(5), at, kind: 'void', entry: id(2) },
    { id: id(6), at, kind: 'transfer', sump: 's1', volume: 5, to: 's1' },
    { id: id(7), at, kind: 'analysis', about: { kind: 'water', id: 'tap' }, hardness: 240 },
  ],
}
const seeds = [JSON.stringify(small), JSON.stringify(small, null, 1)].map((text) => Buffer.from(text))
const tokens = tokensOf([
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '"',
  'null',
  'true',
  '-1',
  '0',
  '1e400',
  '1e-400',
  '-0',
  '0.1',
  '9007199254740993',
  '"\\u0000"',
  '"\\ud800"',
  '"__proto__"',
  '"constructor"',
  '"toString":1,',
  '"id":"s1",',
  '"kind":"of-tomorrow",',
  '"at":"9999-12-31T23:59:59Z",',
  '"at":"2026-02-30T00:00:00Z",',
  '{"below":1}',
  '"sumps":',
  '"entries":',
  '"format":"sumpbook-book/2",',
  '"timeZone":"Nowhere/Land",',
  '[['.repeat(300),
  '{"a":'.repeat(300),
  '9'.repeat(400),
  'x'.repeat(5000),
  '\u0000',
  '\uFEFF',
])

/** A change inside the JSON, so that what comes still is JSON: other values at any place, members gone, doubled or renamed. */
function otherwise(value: unknown, dice: Dice): unknown {
  if (dice(12) === 0) return strange[dice(strange.length)]
  if (Array.isArray(value)) {
    const items = value.map((item) => (dice(4) === 0 ? otherwise(item, dice) : item))
    const at = dice(items.length + 1)
    if (dice(8) === 0) items.splice(at, 1)
    if (dice(8) === 0 && items.length > 0) items.push(items[dice(items.length)])
    return items
  }
  if (typeof value === 'object' && value !== null) {
    const members = Object.entries(value).flatMap(([key, member]): [string, unknown][] => {
      if (dice(20) === 0) return []
      if (dice(20) === 0) return [[keys[dice(keys.length)]!, member]]
      return [[key, dice(4) === 0 ? otherwise(member, dice) : member]]
    })
    return Object.fromEntries(members)
  }
  return value
}
const strange: unknown[] = [
  null,
  true,
  '',
  ' ',
  's1',
  'tap',
  -1,
  0,
  0.5,
  1e15,
  1e300,
  [],
  {},
  [[]],
  { low: 5, high: 1 },
  { atLeast: 1 },
  '\u0000',
  '\ud800',
  '2026-13-01',
  at,
  id(1),
  id(2),
  '9'.repeat(50),
]
const keys = ['id', 'kind', 'at', 'sump', '__proto__', 'constructor', 'typed', 'limits', 'entries', 'of ours', '']

/** One book for all cases: with `preview` nothing is written, and every check is made. */
const book = openBook(await openSqliteStore(inMemory), () => new Date('2026-03-03T10:00:00Z'))

/** Book files: some broken as text, most whole JSON with something else in it. */
export const bookFile: FuzzedParser = {
  name: 'book file (JSON)',
  tryOne: async (dice) => {
    const bytes =
      dice(3) === 0 ? mutated(dice, seeds, tokens) : Buffer.from(JSON.stringify(otherwise(small, dice)) ?? '')
    try {
      await book.importFile(sourceOf('book.json', bytes), { preview: true })
      return 'taken'
    } catch (error) {
      if (!(error instanceof BookError) || error.code !== 'refused-input') throw error
      if (error.faults.length === 0) throw new Error('a refusal without a fault')
      return 'refused'
    }
  },
}
