import { expect, test } from 'vitest'
import { unbroken } from './unbroken.ts'

test.each([
  ['Add 38 L at 7.5 %', 'Add 38_L at 7.5_%'],
  ['38,5 L mit 7,5 % nachfüllen.', '38,5_L mit 7,5_% nachfüllen.'],
  ['6.1 % (5.6–6.6), then 3.5 °Brix', '6.1_% (5.6–6.6), then 3.5_°Brix'],
  ['at 50 mg/L, 10.2 gal in 4 h', 'at 50_mg/L, 10.2_gal in 4_h'],
  ['the limit is 5 mg/m³', 'the limit is 5_mg/m³'],
])('%s: a figure stays with its unit', (text, whole) => {
  expect(unbroken(text)).toBe(whole.replaceAll('_', '\u00a0'))
})

test.each(['7 in 10', '3 Lots', '12 machines', '2 Tage', '5 gallons', 'L 3', '4 hours', '1 to 2'])(
  '%s: a word after a figure is no unit',
  (text) => {
    expect(unbroken(text)).toBe(text)
  },
)
