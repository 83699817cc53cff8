import { readFile } from 'node:fs/promises'
import { buffer } from 'node:stream/consumers'
import {
  fileSource,
  type ImportReport,
  refusal,
  type SheetMap,
  type SheetSource,
  sayFault,
  sourceOf,
} from '@sumpbook/book'
import { say } from '@sumpbook/fluid'
import { type Command, exits, UsageError, type World } from '../command.ts'
import { withBook } from '../open.ts'
import { oneFile, parse } from '../options.ts'
import { readSettings } from '../settings.ts'

/** An import of more entries leaves working out where the sumps stand to whoever asks first, or to the server. */
const settledAtOnce = 20_000

/** Takes a file into the book. */
export const importCommand: Command = {
  summary: 'Takes a book file, a CSV or a workbook into the book, all or nothing',
  usage: `sumpbook import FILE [--map MAP.json] [--dates dmy|mdy|ymd] [--preview] [--data FOLDER] [--json]

  FILE       a book file (JSON), CSV or XLSX; - reads standard input
  --map      what the sheet does not say: columns, units, machines, marks, targets
  --dates    the order of day, month and year where the sheet leaves it open
  --preview  says what would happen and what is still open; writes nothing

Importing the same file twice changes nothing; a corrected cell becomes a withdrawal and a new entry.`,
  run: async (args, world) => {
    const { values, positionals } = parse(args, {
      map: { type: 'string' },
      dates: { type: 'string' },
      preview: { type: 'boolean', default: false },
    })
    const source = await sourceAt(oneFile(positionals), world)
    const map = { ...(await readMap(values.map)), ...datesOf(values.dates) }
    const report = await withBook(readSettings(values, world), async (book) => {
      const taken = await book.importFile(source, { map, preview: values.preview })
      if (!values.preview && taken.counts.entries <= settledAtOnce) await book.settle()
      return taken
    })
    world.stdout.write(values.json ? `${JSON.stringify(report, null, 2)}\n` : reportText(report, values.preview))
    for (const warning of report.warnings) world.stderr.write(`${warning}\n`)
    return exits.done
  },
}

async function sourceAt(file: string, { stdin }: World): Promise<SheetSource> {
  if (file === '-') return sourceOf('standard input', await buffer(stdin))
  await readable(file)
  return fileSource(file)
}

async function readable(file: string): Promise<void> {
  const { access } = await import('node:fs/promises')
  await access(file).catch(() => {
    throw refusal([{ pointer: '', found: `no file at ${file}`, expected: 'a file that can be read' }], 'file')
  })
}

async function readMap(file: string | undefined): Promise<SheetMap> {
  if (file === undefined) return {}
  await readable(file)
  try {
    return JSON.parse(await readFile(file, 'utf8')) as SheetMap
  } catch {
    throw refusal([{ pointer: '', found: 'text that is not JSON', expected: 'the map as JSON' }], 'map')
  }
}

function datesOf(dates: string | undefined): Pick<SheetMap, 'dates'> {
  if (dates === undefined) return {}
  if (dates === 'dmy' || dates === 'mdy' || dates === 'ymd') return { dates }
  throw new UsageError(`--dates: found "${dates}", expected dmy, mdy or ymd`)
}

function reportText(report: ImportReport, preview: boolean): string {
  const { counts, questions, faults, columns = [], rows } = report
  const understood = columns.map(({ heading, field, unit, sumpName }) => {
    const what = field === null ? say('left out') : [field, unit, sumpName].filter((part) => part !== null).join(', ')
    return `  ${heading}: ${what}`
  })
  const { entries, things, same, corrected } = counts
  const told = { entries, things, same, corrected }
  const lines = [
    ...(understood.length > 0 ? [say('Columns:'), ...understood] : []),
    ...(preview
      ? rows.slice(0, 20).map(({ row, fate, text }) => {
          const words = say('row {row}: {fate}', { row, fate })
          return text === '' ? `  ${words}` : `  ${words}, ${text}`
        })
      : []),
    ...questions.map(({ pointer, question, choices }) => {
      const words = say('Still open, {pointer}: {question}', { pointer, question })
      return choices === undefined ? words : `${words} (${choices.join(', ')})`
    }),
    ...faults.map((fault) => say('Fault: {fault}', { fault: sayFault(fault) })),
    preview
      ? say(
          'Would take in {entries} entries and {things} things; {same} were there already, {corrected} corrected.',
          told,
        )
      : say('Took in {entries} entries and {things} things; {same} were there already, {corrected} corrected.', told),
  ]
  return `${lines.join('\n')}\n`
}
