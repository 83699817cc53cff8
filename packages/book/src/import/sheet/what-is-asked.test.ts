import { learn, speakAs } from '@sumpbook/fluid'
import { describe, expect, onTestFinished, test } from 'vitest'
import { catalogue as german } from '../../words/de.ts'
import { csv, fixture, metric, preview, refused, take, us } from './testing.ts'

describe('what is asked', () => {
  test('the order of dates that nothing tells', async () => {
    const { faults } = await refused(fixture('ambiguous-dates.csv'), {}, metric())
    expect(faults).toMatchObject([{ pointer: '/dates', found: 'nothing' }])
    const book = metric()
    await take(fixture('ambiguous-dates.csv'), { dates: 'mdy' }, book)
    expect(book.entries.map(({ at }) => at.slice(0, 10))).toEqual([
      '2026-03-04',
      '2026-03-04',
      '2026-05-06',
      '2026-05-06',
    ])
  })

  test('what may be answered stands behind the question, as a list of the language that is spoken', async () => {
    const asked = async () => (await refused(fixture('ambiguous-dates.csv'), {}, metric())).faults[0]?.expected
    expect(await asked()).toMatch(/ \(dmy or mdy\)$/)
    learn('de', german)
    speakAs(() => ({ language: 'de', numbers: 'de-DE' }))
    onTestFinished(() => speakAs(() => ({ language: 'en', numbers: 'en' })))
    expect(await asked()).toMatch(/ \(dmy oder mdy\)$/)
  })

  test('a date against the order that was said is a fault', async () => {
    const { faults } = await refused(
      csv('Date,Machine,Brix\n13/04/2026,Mill 7,3\n03/04/2026,Mill 7,3\n'),
      { dates: 'mdy' },
      metric(),
    )
    expect(faults).toMatchObject([{ row: 2, column: 'Date', found: '"13/04/2026"' }])
  })

  test('the heading can say the order', async () => {
    expect((await preview(csv('Date (dd/mm/yyyy),Machine,Brix\n03/04/2026,Mill 7,3\n'), {}, metric())).dates).toBe(
      'dmy',
    )
  })

  test('the decimal sign that nothing tells', async () => {
    const sheet = csv('Date,Machine,Bacteria\n2026-10-05,Mill 7,"1,234"\n')
    expect((await refused(sheet, {}, metric())).faults).toMatchObject([{ pointer: '/decimal' }])
    const [point, comma] = [metric(), metric()]
    await take(sheet, { decimal: '.' }, point)
    await take(sheet, { decimal: ',' }, comma)
    expect([point, comma].map(({ entries }) => 'bacteria' in entries[0]! && entries[0].bacteria)).toEqual([1234, 1.234])
  })

  test('a number with the other sign than was said is a fault', async () => {
    expect(
      (await refused(csv('Date;Machine;Brix\n2026-10-05;Mill 7;3,4\n'), { decimal: '.' }, metric())).faults,
    ).toMatchObject([{ row: 2, column: 'Brix', found: '"3,4"' }])
  })

  test.each([
    ['Level', '200', '/columns/Level/unit', 'L'],
    ['Hardness', '12', '/columns/Hardness/unit', 'gpg'],
    ['Conductivity', '2.4', '/columns/Conductivity/unit', 'mS/cm'],
  ])('the unit of %s where neither heading nor figures tell', async (heading, value, pointer, unit) => {
    const sheet = csv(`Date,Machine,${heading}\n2026-10-05,Mill 7,${value}\n`)
    const { questions } = await preview(sheet, {}, us())
    expect(questions).toMatchObject([{ pointer, choices: expect.arrayContaining([unit]) }])
    expect((await take(sheet, { columns: { [heading]: { unit } } }, us())).counts.entries).toBe(1)
  })

  test('a hardness above any sum of grains or degrees can only be ppm, and that is told', async () => {
    const report = await preview(csv('Date,Machine,Hardness\n2026-10-05,Mill 7,180\n'), {}, us())
    expect(report.questions).toEqual([])
    expect(report.warnings.join()).toContain('taken as ppm')
  })

  test("volumes without a unit are in the shop's own, and that is told", async () => {
    const book = us()
    const report = await take(csv('Date,Machine,Added\n10/15/2026,Mill 7,10\n'), {}, book)
    expect(report.warnings.join()).toContain("US gal, the shop's own")
    expect(book.entries[0]).toMatchObject({ volume: expect.closeTo(37.85412, 4) })
  })

  test('what machine columns hold where no title says it', async () => {
    const sheet = csv('Date,Mill 7,Lathe 2\n2026-10-05,3.4,5.1\n')
    expect((await preview(sheet, {}, metric())).questions).toMatchObject([{ pointer: '/values/field' }])
    const book = metric()
    await take(sheet, { values: { field: 'brix' } }, book)
    expect(book.entries).toMatchObject([
      { sump: 'm7', brix: 3.4 },
      { sump: 'l2', brix: 5.1 },
    ])
  })

  test('a column of weeks is no machine', async () => {
    const report = await preview(csv('KW,Date,Mill 7 Brix\n41,2026-10-05,3.4\n'), {}, metric())
    expect(report.questions).toEqual([])
    expect(report.warnings).toEqual(['"KW" is not understood; it is left out.'])
  })

  test('which machine a sheet without any is about', async () => {
    const sheet = csv('Date,Brix,pH\n2026-10-05,3.4,9\n')
    expect((await preview(sheet, {}, metric())).questions.map(({ pointer }) => pointer)).toEqual([
      '/columns/Brix/sump',
      '/columns/pH/sump',
    ])
    const book = metric()
    await take(sheet, { columns: { Brix: { sump: 'Mill 7' }, pH: { sump: 'Mill 7' } } }, book)
    expect(book.entries).toMatchObject([
      { sump: 'm7', brix: 3.4 },
      { sump: 'm7', ph: 9 },
    ])
  })
})
