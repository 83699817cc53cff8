import { message, say, sayNumber } from '@sumpbook/fluid'
import { useId, useState } from 'preact/hooks'
import type { FaultDetail, ImportReport, Question, RowFate, SheetField, SheetMap, Units } from '../api/types.ts'
import { FaultWords } from '../fields/fields.tsx'
import type { Fault } from '../fields/read.ts'
import { WideTable } from '../parts/wide-table.tsx'
import {
  answerAt,
  answerKind,
  canBeUnknown,
  choiceWords,
  fieldWords,
  hasUnit,
  questionWords,
  readAnswer,
  withAnswer,
} from './sheet-answers.ts'

interface ColumnsProps {
  report: ImportReport
  map: SheetMap
  answer(map: SheetMap): void
}

/** How each column is understood; what is wrong is changed at its place. */
export function Columns({ report: { columns = [], dates, decimal, shape }, map, answer }: ColumnsProps) {
  const change = (heading: string, column: { field?: SheetField; unit?: string; sump?: string } | null) =>
    answer({ ...map, columns: { ...map.columns, [heading]: column } })
  const said = (heading: string) => map.columns?.[heading] ?? {}
  return (
    <>
      <WideTable of={say('Columns of the sheet')}>
        <table class="columns">
          <thead>
            <tr>
              <th>{say('Column')}</th>
              <th>{say('holds')}</th>
              <th>{say('in')}</th>
              {shape === 'wide' && <th>{say('Machine')}</th>}
            </tr>
          </thead>
          <tbody>
            {columns.map(({ heading, field, unit, sump, sumpName }) => (
              <tr key={heading}>
                <td>
                  <strong>{heading === '' ? say('(no heading)') : heading}</strong>
                </td>
                <td>
                  <select
                    aria-label={say('What {heading} holds', { heading })}
                    value={field ?? ''}
                    onChange={(event) => {
                      const chosen = event.currentTarget.value
                      change(heading, chosen === '' ? null : { ...said(heading), field: chosen as SheetField })
                    }}
                  >
                    <option value="" selected={field === null}>
                      {field === null && sump !== null ? say('asked below') : say('left out')}
                    </option>
                    {fieldWords.map(([name, words]) => (
                      <option value={name} selected={name === field}>
                        {say(words)}
                      </option>
                    ))}
                  </select>
                </td>
                <td>
                  {field !== null && hasUnit(field) && (
                    <LaterInput
                      label={say('Unit of {heading}', { heading })}
                      value={unit ?? ''}
                      settle={(text) => {
                        const { unit: _unit, ...others } = said(heading)
                        change(heading, text === '' ? { ...others, field } : { ...others, field, unit: text })
                      }}
                    />
                  )}
                </td>
                {shape === 'wide' && <td>{sumpName ?? ''}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </WideTable>
      <div class="sheet-choices">
        <Choice
          label={say('Form')}
          value={shape ?? ''}
          choices={['long', 'wide']}
          pointer="/shape"
          map={map}
          answer={answer}
        />
        <Choice
          label={say('Dates')}
          value={dates ?? ''}
          choices={['dmy', 'mdy', 'ymd']}
          pointer="/dates"
          map={map}
          answer={answer}
        />
        <Choice
          label={say('Decimal sign')}
          value={decimal ?? ''}
          choices={[',', '.']}
          pointer="/decimal"
          map={map}
          answer={answer}
        />
      </div>
    </>
  )
}

function Choice({
  label,
  value,
  choices,
  pointer,
  map,
  answer,
}: {
  label: string
  value: string
  choices: readonly string[]
  pointer: string
  map: SheetMap
  answer(map: SheetMap): void
}) {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) =>
          answer(withAnswer(map, pointer, event.currentTarget.value === '' ? undefined : event.currentTarget.value))
        }
      >
        {value === '' && (
          <option value="" selected>
            {say('not settled')}
          </option>
        )}
        {choices.map((choice) => (
          <option value={choice} selected={choice === value}>
            {choiceWords(pointer, choice)}
          </option>
        ))}
      </select>
    </div>
  )
}

/** Text that is handed over when the field is left, not at every key. */
function LaterInput({ label, value, settle }: { label: string; value: string; settle(text: string): void }) {
  return (
    <input
      aria-label={label}
      class="unit"
      defaultValue={value}
      key={value}
      onChange={(event) => event.currentTarget.value.trim() !== value && settle(event.currentTarget.value.trim())}
    />
  )
}

/** Each question with its answer beside it; the sheet is read again with every answer. */
interface QuestionsProps {
  questions: readonly Question[]
  map: SheetMap
  units: Units
  /** With the answers, the questions they belong to. */
  answer(map: SheetMap, answered: readonly Question[]): void
}

export function Questions({ questions, map, units, answer }: QuestionsProps) {
  const [texts, setTexts] = useState<Record<string, string>>({})
  const [faults, setFaults] = useState<Record<string, Fault>>({})
  const settle = () => {
    let next = map
    const answered: Question[] = []
    const wrong: Record<string, Fault> = {}
    for (const question of questions) {
      const text = texts[question.pointer] ?? ''
      if (text.trim() === '') continue
      const read = readAnswer(text, answerKind(question), units)
      if ('fault' in read) wrong[question.pointer] = read.fault
      else {
        next = withAnswer(next, question.pointer, read.value)
        answered.push(question)
      }
    }
    setFaults(wrong)
    if (next !== map) answer(next, answered)
  }
  return (
    <form
      aria-label={say('Questions about the sheet')}
      class="questions"
      onSubmit={(event) => {
        event.preventDefault()
        settle()
      }}
    >
      {questions.map((question) => (
        <QuestionField
          key={question.pointer}
          question={question}
          text={texts[question.pointer] ?? ''}
          fault={faults[question.pointer] ?? null}
          type={(text) => setTexts({ ...texts, [question.pointer]: text })}
          isUnknown={answerAt(map, question.pointer) === null}
          unknown={() => answer(withAnswer(map, question.pointer, null), [question])}
        />
      ))}
      <div class="buttons">
        <button type="submit">{say('Answer and read the sheet again')}</button>
      </div>
    </form>
  )
}

/** What was answered, with the way back: the question then stands open again. */
export function Answers({
  asked,
  map,
  answer,
}: {
  asked: readonly Question[]
  map: SheetMap
  answer(map: SheetMap): void
}) {
  const given = asked.filter(({ pointer }) => answerAt(map, pointer) !== undefined)
  if (given.length === 0) return null
  return (
    <details class="part">
      <summary>{say('Answers given: {count}', { count: given.length })}</summary>
      <ul class="answers">
        {given.map((question) => (
          <li key={question.pointer}>
            <span>{questionWords(question)}</span>
            <strong>{sayAnswer(question, answerAt(map, question.pointer))}</strong>
            <button
              type="button"
              class="plain take-back"
              aria-label={say('Take back: {question}', { question: questionWords(question) })}
              onClick={() => answer(withAnswer(map, question.pointer, undefined))}
            >
              {say('Take back')}
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}

function sayAnswer(question: Question, value: unknown): string {
  if (value === null) return say('not known')
  if (typeof value !== 'number') return choiceWords(question.pointer, String(value))
  const unit = { volume: ' L', percent: ' %', number: '', choice: '', text: '' }[answerKind(question)]
  return `${sayNumber(value, 2, {}, 0)}${unit}`
}

interface QuestionFieldProps {
  question: Question
  text: string
  fault: Fault | null
  isUnknown: boolean
  type(text: string): void
  unknown(): void
}

function QuestionField({ question, text, fault, isUnknown, type, unknown }: QuestionFieldProps) {
  const id = useId()
  const kind = answerKind(question)
  const after = kind === 'percent' ? '%' : kind === 'volume' ? say('litres, or with a unit: 80 gal') : ''
  return (
    <div class="field question">
      <label for={id}>{questionWords(question)}</label>
      <div class="answer">
        {question.choices !== undefined ? (
          <select id={id} value={text} onChange={(event) => type(event.currentTarget.value)}>
            <option value="">{say('choose')}</option>
            {question.choices.map((choice) => (
              <option value={choice} selected={choice === text}>
                {choiceWords(question.pointer, choice)}
              </option>
            ))}
          </select>
        ) : (
          <input
            id={id}
            value={text}
            inputMode={kind === 'text' ? 'text' : 'decimal'}
            autocomplete="off"
            aria-invalid={fault === null ? undefined : 'true'}
            placeholder={after}
            onInput={(event) => type(event.currentTarget.value)}
          />
        )}
        {canBeUnknown(question) && (
          <button type="button" class="plain" aria-pressed={isUnknown} onClick={unknown}>
            {say('Not known')}
          </button>
        )}
      </div>
      {fault !== null && <FaultWords fault={fault} />}
    </div>
  )
}

/** Every fault by its row and column: what was found, what was expected. */
export function FaultTable({ faults }: { faults: readonly FaultDetail[] }) {
  return (
    <WideTable of={say('Faults')}>
      <table class="faults">
        <thead>
          <tr>
            <th>{say('Row')}</th>
            <th>{say('Column')}</th>
            <th>{say('Found')}</th>
            <th>{say('Expected')}</th>
          </tr>
        </thead>
        <tbody>
          {faults.map(({ pointer, row, column, found, expected }) => (
            <tr>
              <td class="figure">{row ?? ''}</td>
              <td>{column ?? (row === undefined ? pointer : '')}</td>
              <td>{found}</td>
              <td>{expected}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  )
}

const fates: Record<RowFate['fate'], string> = {
  new: message('new'),
  same: message('in the book already'),
  corrected: message('corrected'),
  blank: message('blank'),
  refused: message('refused'),
}

/** What becomes of every row. */
export function Rows({ rows, total }: { rows: readonly RowFate[]; total: number }) {
  if (rows.length === 0) return null
  return (
    <details class="rows part" open={rows.length <= 30}>
      <summary>{say('What becomes of every row')}</summary>
      <WideTable of={say('Rows')}>
        <table>
          <thead>
            <tr>
              <th>{say('Row')}</th>
              <th>{say('Fate')}</th>
              <th>{say('Becomes')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ row, fate, text }) => (
              <tr key={row}>
                <td>{row}</td>
                <td>
                  <span class={fate === 'refused' ? 'tag do' : fate === 'new' ? 'tag plain' : 'quiet'}>
                    {say(fates[fate])}
                  </span>
                </td>
                <td>{text}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </WideTable>
      {total > rows.length && (
        <p class="quiet">
          {say('The first {shown} of {total} rows are shown.', {
            shown: sayNumber(rows.length, 0),
            total: sayNumber(total, 0),
          })}
        </p>
      )}
    </details>
  )
}
