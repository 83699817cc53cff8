import { expect, test } from 'vitest'
import { type OfferedLimit, settledLimits } from './settled-limits.ts'

const offer = (more: Partial<OfferedLimit>): OfferedLimit => ({
  quantity: 'nitrite',
  end: 'high',
  value: 20,
  level: 'guidance',
  source: 'a rule',
  binding: false,
  ...more,
})
const binding = offer({ binding: true })

test('the most particular level wins, and says what the others say', () => {
  const [limit] = settledLimits([
    offer({ level: 'sump', value: 12 }),
    offer({}),
    offer({ level: 'fluid', value: 15 }),
    offer({ level: 'work', value: 14 }),
    offer({ level: 'shop', value: 18 }),
  ])
  expect(limit).toMatchObject({ level: 'sump', value: 12, refused: null })
  expect(limit!.others.map(({ level }) => level)).toEqual(['guidance', 'shop', 'fluid', 'work'])
})

test('a binding limit is made tighter by the sump, never looser', () => {
  expect(settledLimits([binding, offer({ level: 'sump', value: 15 })])[0]).toMatchObject({ value: 15, refused: null })
  expect(settledLimits([binding, offer({ level: 'sump', value: 50 })])[0]).toMatchObject({
    value: 20,
    level: 'guidance',
    refused: { level: 'sump', value: 50 },
  })
})

test('of a floor the higher one is the tighter', () => {
  const floor = offer({ quantity: 'ph', end: 'low', value: 8.5, binding: true })
  expect(settledLimits([floor, { ...floor, level: 'sump', value: 8.8 }])[0]).toMatchObject({
    value: 8.8,
    refused: null,
  })
  expect(settledLimits([floor, { ...floor, level: 'sump', value: 8 }])[0]).toMatchObject({
    value: 8.5,
    refused: { value: 8 },
  })
})

test('limits of other kinds stay apart, and what nobody sets is not there', () => {
  const settled = settledLimits([binding, offer({ end: 'low' }), offer({ quantity: 'chloride' })])
  expect(settled.map(({ quantity, end }) => `${quantity} ${end}`)).toEqual([
    'nitrite high',
    'nitrite low',
    'chloride high',
  ])
  expect(settledLimits([])).toEqual([])
})
