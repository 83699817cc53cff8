import { expect, test } from 'vitest'
import { sampleMethodOf, sampleState, sampleWindows, slideRead } from './slide-read.ts'

const window = { fromHours: 24, toHours: 72 }
const classes = { reasonable: 1e4, poor: 1e6 }
const read = (count: Parameters<typeof slideRead>[0], hours: number) => slideRead(count, hours, { window, classes })

test.each([
  ['dip slide', 'dip slide'],
  ['Dip-slide, bacteria', 'dip slide'],
  ['slide, yeast and mould', 'slide for moulds'],
  ['standing over the weekend', 'standing sample'],
  ['bottle to the lab', 'laboratory'],
  [null, 'laboratory'],
])('%s is a %s', (words, method) => {
  expect(sampleMethodOf(words)).toBe(method)
})

test('a slide grows for a day, is to be read for two, and is past its window then', () => {
  expect([23.9, 24, 72, 72.1].map((hours) => sampleState(hours, window))).toEqual([
    'growing',
    'to-read',
    'to-read',
    'past',
  ])
  expect(sampleWindows['dip slide']).toEqual(window)
})

test('within its window a slide counts as it was read', () => {
  expect(read({ low: 1e4, high: 1e5 }, 48)).toEqual({
    timing: 'in-window',
    germs: 'reasonable',
    counts: 'as-read',
    isFreshSlideDue: false,
  })
})

test('read too early, growth counts as at least that, and a good class says nothing', () => {
  expect(read(1e6, 20)).toMatchObject({ timing: 'early', germs: 'poor', counts: 'at-least' })
  expect(read({ below: 1000 }, 20)).toMatchObject({ timing: 'early', germs: null, counts: 'not-yet' })
})

test('read too late, a good class stands, and a worse one asks for a fresh slide', () => {
  expect(read({ below: 1000 }, 100)).toMatchObject({ germs: 'good', counts: 'as-read', isFreshSlideDue: false })
  expect(read(1e5, 100)).toMatchObject({ germs: 'reasonable', counts: 'at-most', isFreshSlideDue: true })
})

test('without classes nothing is judged', () => {
  expect(slideRead(1e5, 48, { window, classes: null }).germs).toBeNull()
  expect(slideRead(1e5, 100, { window, classes: null })).toMatchObject({ germs: null, isFreshSlideDue: false })
})

test('a slide under the only limit there is counts as one that is fine: early it says nothing, late it stands', () => {
  const only = { window, classes: { reasonable: null, poor: 1e6 } }
  expect(slideRead(1e5, 20, only)).toMatchObject({ germs: null, counts: 'not-yet' })
  expect(slideRead(1e5, 100, only)).toMatchObject({ germs: 'under-limit', isFreshSlideDue: false })
})

test('a result before its sample is refused', () => {
  expect(() => read(1e5, -1)).toThrow('hours is -1')
})

test('out of its window a slide never looks better than within', () => {
  const rank = { good: 0, 'under-limit': 0, reasonable: 1, poor: 2 }
  for (const count of [100, 1e3, 1e4, 1e5, 1e6, 1e7]) {
    const within = read(count, 48).germs!
    for (const hours of [1, 23, 73, 1000]) {
      const { germs, counts } = read(count, hours)
      expect(germs === null ? counts === 'not-yet' : rank[germs] >= rank[within]).toBe(true)
    }
  }
})
