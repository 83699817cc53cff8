import { say } from '@sumpbook/fluid'
import { useRef, useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { OutOfReach, putEntry, Refusal, sendSheet } from '../api/client.ts'
import { refresh } from '../api/queries.ts'
import type { Book, ImportReport, Problem, Question, SheetMap } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { ShopFields, shopFaults, shopHere } from '../shop/shop-form.tsx'
import { useSaving } from '../shop/use-saving.ts'
import { Answers, Columns, FaultTable, Questions, Rows } from './report.tsx'
import '../shop/shop.css'
import './sheet.css'

type State =
  | { at: 'choose' }
  | { at: 'reading' | 'importing'; report: ImportReport | null }
  | { at: 'preview'; report: ImportReport }
  | { at: 'refused'; problem: Problem; report: ImportReport | null }
  | { at: 'out-of-reach'; report: ImportReport | null }
  | { at: 'done'; report: ImportReport }

/** A spreadsheet, or a book file, on its way into the book: how it is understood, what is asked, every row's fate. */
export function BringSheet({ book }: { book: Book }) {
  const [file, setFile] = useState<File | null>(null)
  const [map, setMap] = useState<SheetMap>({})
  const [state, setState] = useState<State>({ at: 'choose' })
  const [asked, setAsked] = useState<readonly Question[]>([])
  const latest = useRef(0)

  const send = async (sent: File, answers: SheetMap, preview: boolean) => {
    const mine = ++latest.current
    const report = 'report' in state ? state.report : null
    setState({ at: preview ? 'reading' : 'importing', report })
    const next = await sendSheet(sent, answers, { preview }).then(
      (answer): State => ({ at: preview ? 'preview' : 'done', report: answer }),
      (error: unknown): State => {
        if (error instanceof Refusal) return { at: 'refused', problem: error.problem, report }
        if (error instanceof OutOfReach) return { at: 'out-of-reach', report }
        throw error
      },
    )
    // An answer to an older question is not shown over a newer one's.
    if (mine !== latest.current) return
    setState(next)
    if (next.at === 'done') await refresh()
  }
  const choose = (chosen: File | undefined) => {
    if (chosen === undefined) return
    setFile(chosen)
    setMap({})
    setAsked([])
    void send(chosen, {}, true)
  }
  const answer = (next: SheetMap, answered: readonly Question[] = []) => {
    setMap(next)
    setAsked([...asked.filter(({ pointer }) => !answered.some((each) => each.pointer === pointer)), ...answered])
    if (file !== null) void send(file, next, true)
  }

  if (book.empty || book.shop.name === '') return <ShopFirst />
  const report = 'report' in state ? state.report : null
  return (
    <div class="bring">
      <h1>{say('Bring a spreadsheet')}</h1>
      {state.at === 'done' ? (
        <Done report={state.report} />
      ) : (
        <>
          <p class="lede">
            {say(
              'CSV or XLSX as you keep it, or a Sumpbook book file. Nothing is written before you have seen what becomes of every row.',
            )}
          </p>
          <DropPlace file={file} choose={choose} />
          {state.at === 'reading' && <p class="quiet">{say('Reading it …')}</p>}
          {state.at === 'importing' && <p class="quiet">{say('Writing it into the book …')}</p>}
          {state.at === 'out-of-reach' && (
            <p class="fault">
              {say('The book is out of reach just now. The file and your answers are still here: try again.')}
            </p>
          )}
          {state.at === 'refused' && <Refused problem={state.problem} />}
          {report !== null && (
            <Understood
              report={report}
              map={map}
              book={book}
              asked={asked}
              answer={answer}
              isBusy={state.at === 'reading' || state.at === 'importing'}
              take={() => file !== null && void send(file, map, false)}
            />
          )}
        </>
      )}
    </div>
  )
}

function DropPlace({ file, choose }: { file: File | null; choose(file: File | undefined): void }) {
  const [isOver, setOver] = useState(false)
  return (
    <label
      class={isOver ? 'drop over' : 'drop'}
      onDragOver={(event) => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault()
        setOver(false)
        choose(event.dataTransfer?.files[0])
      }}
    >
      <input
        type="file"
        aria-label={say('The file')}
        accept=".csv,.txt,.tsv,.xlsx,.json"
        onChange={(event) => {
          choose(event.currentTarget.files?.[0])
          event.currentTarget.value = ''
        }}
      />
      <strong>{file === null ? say('Choose the file') : file.name}</strong>
      <span class="quiet">{file === null ? say('or drop it here') : say('choose or drop another')}</span>
    </label>
  )
}

interface UnderstoodProps {
  report: ImportReport
  map: SheetMap
  book: Book
  isBusy: boolean
  asked: readonly Question[]
  answer(map: SheetMap, answered?: readonly Question[]): void
  take(): void
}

function Understood({ report, map, book, asked, isBusy, answer, take }: UnderstoodProps) {
  const { counts, questions, faults, warnings } = report
  const isReady = questions.length === 0 && faults.length === 0
  return (
    <>
      <section class="part" aria-labelledby="understood">
        <h2 id="understood">{report.kind === 'book' ? say('A book file') : say('As it is understood')}</h2>
        <p>{sayCounts(report)}</p>
        {warnings.map((warning) => (
          <p class="note">{warning}</p>
        ))}
        {report.columns !== undefined && <Columns report={report} map={map} answer={answer} />}
      </section>
      {questions.length > 0 && (
        <section class="part" aria-labelledby="asked">
          <h2 id="asked">{say('What the sheet does not say')}</h2>
          <Questions questions={questions} map={map} units={book.shop.units} answer={answer} />
        </section>
      )}
      <Answers asked={asked} map={map} answer={answer} />
      {faults.length > 0 && (
        <section class="part" aria-labelledby="faults">
          <h2 id="faults">
            {say('{count, plural, =1 {One fault} other {# faults}}: mend the sheet, then choose it again', {
              count: faults.length,
            })}
          </h2>
          <FaultTable faults={faults} />
        </section>
      )}
      <Rows rows={report.rows} total={counts.rows} />
      <div class="buttons take">
        <button type="button" class="main" disabled={!isReady || isBusy} onClick={take}>
          {say('Write {count, plural, =1 {one entry} other {# entries}} into the book', { count: counts.entries })}
        </button>
        {!isReady && (
          <span class="quiet">
            {questions.length > 0 ? say('once every question is answered') : say('once no fault is left')}
          </span>
        )}
      </div>
    </>
  )
}

function sayCounts({ kind, shape, counts }: ImportReport): string {
  const count = (name: 'rows' | 'new' | 'same' | 'corrected' | 'blank' | 'refused') => ({ count: counts[name] })
  const rows = [
    say('{count, plural, one {# row} other {# rows}}', count('rows')),
    counts.new > 0 ? say('{count, plural, one {# new} other {# new}}', count('new')) : '',
    counts.same > 0
      ? say('{count, plural, one {# in the book already} other {# in the book already}}', count('same'))
      : '',
    counts.corrected > 0
      ? say('{count, plural, one {# corrected since} other {# corrected since}}', count('corrected'))
      : '',
    counts.blank > 0 ? say('{count, plural, one {# blank} other {# blank}}', count('blank')) : '',
    counts.refused > 0 ? say('{count, plural, one {# refused} other {# refused}}', count('refused')) : '',
  ].filter((part) => part !== '')
  return [
    kind === 'book' ? '' : shape === 'wide' ? say('A column a machine.') : say('One reading a row.'),
    `${rows.join(', ')}.`,
    counts.things > 0
      ? say('{count, plural, one {# new thing} other {# new things}} of the shop.', { count: counts.things })
      : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

function Refused({ problem }: { problem: Problem }) {
  return (
    <section class="part" role="alert" aria-label={say('Refused')}>
      <p class="fault">
        {say('Refused; nothing was written.')}{' '}
        {problem.errors === undefined || problem.errors.length === 0 ? (problem.detail ?? problem.title) : ''}
      </p>
      {problem.errors !== undefined && problem.errors.length > 0 && <FaultTable faults={problem.errors} />}
    </section>
  )
}

function Done({ report: { counts } }: { report: ImportReport }) {
  const { entries, rows, things } = counts
  const told = { entries, rows, things }
  return (
    <>
      <p class="lede">
        {counts.things > 0
          ? say(
              'In the book: {entries, plural, =1 {one entry} other {# entries}} from {rows, plural, one {# row} other {# rows}}, and {things, plural, one {# new thing} other {# new things}} of the shop. Importing the same sheet again changes nothing.',
              told,
            )
          : say(
              'In the book: {entries, plural, =1 {one entry} other {# entries}} from {rows, plural, one {# row} other {# rows}}. Importing the same sheet again changes nothing.',
              told,
            )}
      </p>
      <div class="buttons">
        <Link class="button main" href="/">
          {say('See what to do today')}
        </Link>
        <Link class="button" href="/shop">
          {say('Look over the sumps')}
        </Link>
      </div>
    </>
  )
}

/** The zone and units of a shop say how its sheet is read: they come first. */
function ShopFirst() {
  const [shop, setShop] = useState(shopHere)
  const saving = useSaving()
  const faults = shopFaults(shop)
  return (
    <form
      class="bring"
      aria-label={say('The shop first')}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        saving.setTried(true)
        if (Object.keys(faults).length > 0) return
        const { name, timeZone, units } = shop
        void saving.put(() =>
          putEntry(setupEntry({ kind: 'shop', id: 'shop' }, { name: name.trim(), timeZone, units }, null, stampNow())),
        )
      }}
    >
      <h1>{say('Bring a spreadsheet')}</h1>
      <p class="lede">{say('First the shop: its time zone and its units say how the sheet is read.')}</p>
      <ShopFields shop={shop} faults={saving.isTried ? faults : {}} change={setShop} />
      {saving.rest.map((sentence) => (
        <p class="fault" role="alert">
          {sentence}
        </p>
      ))}
      <div class="buttons">
        <button type="submit" class="main" disabled={saving.isBusy}>
          {say('On to the sheet')}
        </button>
      </div>
    </form>
  )
}
