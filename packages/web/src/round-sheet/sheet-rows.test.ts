import { expect, test } from 'vitest'
import type { SumpNow, Today } from '../api/types.ts'
import { sheetRows } from './sheet-rows.ts'

const sump = (id: string, order: number | null): SumpNow => ({ sump: id, name: `Mill ${id}`, order }) as SumpNow
const item = (id: string, headline: string) => ({ sump: id, words: { headline } }) as Today['items'][number]
const duty = (id: string | null, headline: string) => ({ sump: id, headline }) as Today['due'][number]

test('sumps stand in walking order, each with its pour before its other duties, those of later in the shift too', () => {
  const today = {
    items: [item('2', 'Pour 40 L')],
    due: [duty('2', 'Read the dip slide'), duty(null, 'Count the drums')],
    later: { sentence: '', items: [item('3', 'Read it')], due: [duty('2', 'Clean the strainer')] },
  }
  const rows = sheetRows([sump('10', null), sump('2', null), sump('3', 1)], today)
  expect(rows.map((row) => [row.sump.sump, row.due])).toEqual([
    ['3', ['Read it']],
    ['2', ['Pour 40 L', 'Read the dip slide', 'Clean the strainer']],
    ['10', []],
  ])
})

test('before the day’s list has come the sheet has its sumps', () => {
  expect(sheetRows([sump('1', null)], undefined)).toEqual([{ sump: sump('1', null), due: [] }])
})
