import { expect, test } from 'vitest'
import { changeOf } from '../shop/change-of.ts'
import { readFields } from '../shop/read-fields.ts'
import { textsOf } from '../shop/texts-of.ts'
import type { Texts } from '../shop/thing-field.ts'
import { ownFields } from './own-fields.ts'

const before = { id: 'shop', name: '', guidance: { pack: 'germany', edition: '2007', own: { ph: { everyDays: 3 } } } }

test('the shop’s own values are read back as they stand, and a changed one leaves the choice alone', () => {
  const texts: Texts = { ...textsOf(before, ownFields, 'metric'), 'guidance.own.nitrite.high': '15' }
  expect(texts['guidance.own.ph.everyDays']).toBe('3')
  const read = readFields(texts, ownFields, 'metric', before)
  if ('faults' in read) throw new TypeError('faults')
  expect(changeOf(before, read.values)).toEqual({
    changes: { guidance: { pack: 'germany', edition: '2007', own: { ph: { everyDays: 3 }, nitrite: { high: 15 } } } },
    was: { guidance: before.guidance },
  })
})

test('days under one are a fault at their field', () => {
  expect(readFields({ 'guidance.own.ph.everyDays': '0' }, ownFields, 'metric')).toHaveProperty([
    'faults',
    'guidance.own.ph.everyDays',
  ])
})
