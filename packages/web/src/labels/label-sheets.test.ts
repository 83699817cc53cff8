import { expect, test } from 'vitest'
import { labelSheets, placeLabels, sayLabelSheet } from './label-sheets.ts'

const paper = { A4: [210, 297], letter: [215.9, 279.4] } as const
const eight = labelSheets.find(({ id }) => id === 'A4-2x4')!

test.each(labelSheets)('every label of $id lies on its paper and beside its neighbours', (sheet) => {
  const [wide, high] = paper[sheet.paper]
  expect(sheet.left).toBeGreaterThanOrEqual(0)
  expect(sheet.top).toBeGreaterThanOrEqual(0)
  expect(sheet.left + (sheet.columns - 1) * sheet.across + sheet.width).toBeLessThanOrEqual(wide)
  expect(sheet.top + (sheet.rows - 1) * sheet.down + sheet.height).toBeLessThanOrEqual(high)
  if (sheet.columns > 1) expect(sheet.across).toBeGreaterThanOrEqual(sheet.width)
  if (sheet.rows > 1) expect(sheet.down).toBeGreaterThanOrEqual(sheet.height)
})

test('a sheet is said as on its packet', () => {
  expect(sayLabelSheet(eight)).toBe('A4, 8 labels of 99.1 × 67.7 mm')
  expect(sayLabelSheet(labelSheets.find(({ id }) => id === 'letter-1')!)).toBe('Letter, two large ones to cut apart')
})

test('labels fill a row before the next begins, and a page before the next', () => {
  const pages = placeLabels([...'abcdefghi'], eight)
  expect(pages.map((page) => page.map(({ item }) => item).join(''))).toEqual(['abcdefgh', 'i'])
  const [a, b, c] = pages[0]!
  expect([b!.top, b!.left]).toEqual([a!.top, a!.left + eight.across])
  expect([c!.top, c!.left]).toEqual([a!.top + eight.down, a!.left])
})

test('places that are used up stay free on the first sheet alone', () => {
  const pages = placeLabels([...'abcdefgh'], eight, 3)
  expect(pages.map((page) => page.map(({ item }) => item).join(''))).toEqual(['abcde', 'fgh'])
  expect(pages[0]![0]).toMatchObject({ top: eight.top + eight.down, left: eight.left + eight.across })
  expect(pages[1]![0]).toMatchObject({ top: eight.top, left: eight.left })
})

test('a sheet that is wholly used up is a sheet begun anew', () => {
  expect(placeLabels(['a'], eight, 8)).toEqual(placeLabels(['a'], eight, 0))
})
