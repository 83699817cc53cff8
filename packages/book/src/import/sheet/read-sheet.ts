import { say } from '@sumpbook/fluid'
import { refusal } from '../../errors.ts'
import { readCsv } from './read-csv.ts'
import type { SheetRows } from './sheet-rows.ts'
import { firstBytesOf, isOldWorkbook, isWorkbook, type SheetSource } from './sheet-source.ts'

/**
 * The rows of a CSV or of one sheet of a workbook.
 *
 * @throws {BookError} `refused-input`: an empty or unreadable file, a sheet the workbook does not have
 */
export async function readSheet(source: SheetSource, sheet?: string): Promise<SheetRows> {
  const head = await firstBytesOf(source, 8)
  if (head.length === 0)
    throw refusal(
      [{ pointer: '', found: say('an empty file'), expected: say('a sheet with a row of headings') }],
      'sheet',
    )
  if (isOldWorkbook(head)) {
    throw refusal(
      [
        {
          pointer: '',
          found: say('a workbook of the old .xls kind'),
          expected: say('the same saved as .xlsx or as CSV'),
        },
      ],
      'sheet',
    )
  }
  if (!isWorkbook(source.name, head)) return readCsv(source)
  const { readWorkbook } = await import('./read-workbook.ts')
  return readWorkbook(source, sheet)
}
