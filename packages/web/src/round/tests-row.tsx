import { message, say } from '@sumpbook/fluid'
import type { CalendarLine } from '../api/guidance.ts'
import { FaultWords } from '../fields/fields.tsx'
import type { SampleWay } from '../tests/test-entries.ts'
import {
  hasTests,
  isPadIn,
  padTapped,
  padWords,
  readTested,
  type Strip,
  type Tested,
  type TestKey,
  testFields,
} from './tested.ts'

/** Samples taken at the sump, by the test of the calendar that each is for. */
const samples: readonly { way: SampleWay; words: string; test: string | null }[] = [
  { way: 'dip slide', words: message('Slide dipped'), test: 'bacteria' },
  { way: 'laboratory', words: message('Bottle for the laboratory'), test: null },
]

interface TestsRowProps {
  tested: Tested
  /** What is due here, out of the calendar. */
  due: readonly Pick<CalendarLine, 'test' | 'name'>[]
  strips: Readonly<Partial<Record<TestKey, Strip>>>
  isOpen: boolean
  isAll: boolean
  active: TestKey | null
  open(): void
  showAll(): void
  focus(key: TestKey): void
  change(tested: Tested): void
  onEnter(): void
}

/** What is due beside strength: a strip's pad is a tap, a figure comes from the keys. What is not due is one tap away. */
export function TestsRow(props: TestsRowProps) {
  const { tested, due, strips, isOpen, isAll, active, change } = props
  const { faults, questions } = readTested(tested)
  const isDue = (test: string | null) => due.some((line) => line.test === test)
  const shown = testFields.filter(({ key }) => isAll || isDue(key) || (tested.texts[key] ?? '') !== '')
  const shownSamples = samples.filter(({ way, test }) => isAll || isDue(test) || tested.taken.includes(way))
  return (
    <>
      <button type="button" class="row signs tests-row" aria-expanded={isOpen} onClick={props.open}>
        <span class="row-label">{say('Tests')}</span>
        <b>{sayTested(tested) || (due.length === 0 ? <span class="quiet">{say('none due')}</span> : sayDue(due))}</b>
      </button>
      {isOpen && (
        <div class="tests-fields">
          {shown.map(({ key, label: name, unit }) => {
            const label = say(name)
            const text = tested.texts[key] ?? ''
            const strip = strips[key]
            const set = (typed: string, by: string | null) => {
              const { [key]: _, ...others } = tested.strips
              change({
                ...tested,
                texts: { ...tested.texts, [key]: typed },
                strips: by === null ? others : { ...others, [key]: by },
              })
            }
            return (
              <div key={key}>
                <div class={active === key ? 'row read here' : 'row read'}>
                  <label for={`test-${key}`}>
                    {label}
                    {isDue(key) && <small>{say('due')}</small>}
                  </label>
                  <input
                    id={`test-${key}`}
                    value={text}
                    inputMode="none"
                    autocomplete="off"
                    aria-label={unit === '' ? label : `${label}, ${unit}`}
                    aria-invalid={faults[key] !== undefined || undefined}
                    onFocus={() => props.focus(key)}
                    onInput={(event) => set(event.currentTarget.value, null)}
                    onKeyDown={(event) => {
                      if (event.key !== 'Enter') return
                      event.preventDefault()
                      props.onEnter()
                    }}
                  />
                  <span>{unit}</span>
                </div>
                {strip !== undefined && (
                  <fieldset class="pads">
                    <legend class="only-read">
                      {say('{test}: pads of {strip}', { test: label, strip: strip.name })}
                    </legend>
                    {strip.pads.map((pad) => (
                      <button
                        key={pad}
                        type="button"
                        class={isPadIn(pad, text) ? 'pad here' : 'pad'}
                        aria-pressed={isPadIn(pad, text)}
                        onClick={() => {
                          props.focus(key)
                          const tapped = padTapped(pad, text, strip.pads)
                          set(tapped, tapped === '' ? null : strip.id)
                        }}
                      >
                        {padWords(pad)}
                      </button>
                    ))}
                  </fieldset>
                )}
                {faults[key] !== undefined && <FaultWords fault={faults[key]} />}
                {questions
                  .filter((one) => one.key === key)
                  .map(({ question, text }) => (
                    <div key={question} class="fault" role="alert">
                      {question}{' '}
                      <button
                        type="button"
                        onClick={() => change({ ...tested, confirmed: { ...tested.confirmed, [key]: text } })}
                      >
                        {say('Yes, that is right')}
                      </button>
                    </div>
                  ))}
              </div>
            )
          })}
          {shown.some(({ key }) => strips[key] !== undefined) && (
            <p class="quiet">{say('Between two pads: tap both.')}</p>
          )}
          <div class="taken">
            {shownSamples.map(({ way, words }) => {
              const isTaken = tested.taken.includes(way)
              const others = tested.taken.filter((one) => one !== way)
              return (
                <button
                  key={way}
                  type="button"
                  class={isTaken ? 'pad here' : 'pad'}
                  aria-pressed={isTaken}
                  onClick={() => change({ ...tested, taken: isTaken ? others : [...others, way] })}
                >
                  {say(words)}
                </button>
              )
            })}
          </div>
          {!isAll && (
            <button type="button" class="plain" onClick={props.showAll}>
              {say('Other tests')}
            </button>
          )}
        </div>
      )}
    </>
  )
}

const sayDue = (due: TestsRowProps['due']) => say('due: {tests}', { tests: due.map(({ name }) => name).join(', ') })

/** "pH 9.2 · slide dipped"; empty where nothing was tested. */
function sayTested(tested: Tested): string {
  if (!hasTests(tested)) return ''
  const figures = testFields
    .filter(({ key }) => (tested.texts[key] ?? '').trim() !== '')
    .map(({ key, label }) => `${say(label)} ${tested.texts[key]!.trim()}`)
  const taken = samples.filter(({ way }) => tested.taken.includes(way)).map(({ words }) => say(words))
  return [...figures, ...taken].join(' · ')
}
