import { expect, test } from 'vitest'
import { allFields } from './all-fields.ts'
import { changeOf } from './change-of.ts'
import { dipRows, dipsText, padsText, readDips, readPads, textOfDips } from './list-fields.ts'
import { readFields } from './read-fields.ts'
import { textsOf } from './texts-of.ts'

test('pads are figures that rise, with blanks or semicolons between; a comma between digits is a decimal sign', () => {
  expect(readPads('0 5 10 25 50')).toEqual({ value: [0, 5, 10, 25, 50] })
  expect(readPads('7, 7,5; 8,0')).toEqual({ value: [7, 7.5, 8] })
  expect(readPads('  ')).toEqual({ value: null })
  expect(padsText([7, 7.5, 8])).toBe('7 7.5 8')
})

test.each(['0,5,10', '5', '10 5', '0 5 5', '0 five'])('%o is no row of pads, and nothing is guessed', (text) => {
  expect(readPads(text)).toMatchObject({ fault: { expected: expect.stringContaining('at least two pads') } })
})

test('a dip table is typed in the shop’s units and kept in millimetres and litres', () => {
  // 1 in = 25.4 mm and 1 US gal = 3.785411784 L (exact definitions): 4 in and 10 gal.
  expect(readDips('4\t10\n8\t25', 'us')).toEqual({
    value: [
      [101.6, expect.closeTo(37.85411784, 8)],
      [203.2, expect.closeTo(94.6352946, 8)],
    ],
  })
  expect(
    dipsText(
      [
        [100, 40],
        [200, 90.5],
      ],
      'metric',
    ),
  ).toBe('100\t40\n200\t90.5')
  expect(readDips('', 'metric')).toEqual({ value: null })
})

test('each fault of a dip table names its row', () => {
  const faultOf = (text: string) => readDips(text, 'metric')
  expect(faultOf('100\t40')).toMatchObject({ fault: { found: 'one row' } })
  expect(faultOf('100\t40\n100\t50')).toEqual({
    fault: { found: '100 in row 2', expected: 'a level above that of the row before' },
  })
  expect(faultOf('100\t40\n200\t30')).toMatchObject({ fault: { found: '30 in row 2' } })
  expect(faultOf('100\t\n200\t30')).toMatchObject({ fault: { found: 'no volume in row 1' } })
  expect(faultOf('deep\t40\n200\t90')).toMatchObject({ fault: { found: expect.stringMatching(/deep.* in row 1$/) } })
})

test('a table while it is typed has one empty row to go on in', () => {
  expect(dipRows('')).toEqual([{ level: '', volume: '' }])
  const rows = dipRows('100\t40')
  expect(rows).toEqual([
    { level: '100', volume: '40' },
    { level: '', volume: '' },
  ])
  expect(textOfDips(rows)).toBe('100\t40')
})

test('a dip table that nobody touched keeps every digit it had', () => {
  const sump = {
    id: 's',
    name: 'S',
    dipTable: [
      [33.333, 10.005],
      [66.667, 20.0001],
    ],
  }
  const texts = { ...textsOf(sump, allFields.sump, 'us'), place: 'bay C' }
  const read = readFields(texts, allFields.sump, 'us', sump)
  if ('faults' in read) throw new Error(JSON.stringify(read.faults))
  expect(changeOf(sump, read.values)).toEqual({ changes: { place: 'bay C' }, was: { place: null } })
})

test('strips with their pads become an instrument of the shop', () => {
  const read = readFields(
    { name: 'Nitrit-Stäbchen', kind: 'strip-nitrite', pads: '0 5 10 25' },
    allFields.instrument,
    'metric',
  )
  expect(read).toMatchObject({ values: { name: 'Nitrit-Stäbchen', kind: 'strip-nitrite', pads: [0, 5, 10, 25] } })
})
