import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Thing } from '../api/types.ts'
import { FaultWords, Taps } from '../fields/fields.tsx'
import { AtOnce } from '../parts/at-once.tsx'
import { BrixRow } from './brix-row.tsx'
import { LevelRow } from './level-row.tsx'
import { isAllSeen, saySeen, senses, stopsOf } from './signs.ts'
import { stripFor, testFields } from './tested.ts'
import { TestsRow } from './tests-row.tsx'
import type { StopState } from './use-stop.ts'

/** What is found out at a stop, a row each: level, the three looks with what must stop because of them, tests, refractometer. */
export function StopRows({ stop, instruments }: { stop: StopState; instruments: readonly Thing[] }) {
  const { sump, shop, draft, change, type, step, setStep, goTo, levelField, verdict, due, test, setTest } = stop
  const { typed, seen, tested } = draft
  const [isAllTests, setAllTests] = useState(false)
  const strips = Object.fromEntries(
    testFields.flatMap(({ key }) => {
      const strip = stripFor(key, instruments)
      return strip === null ? [] : [[key, strip]]
    }),
  )
  const testsRow = stop.hasTestsRow && (
    <TestsRow
      tested={tested}
      due={due}
      strips={strips}
      isOpen={step === 'tests'}
      isAll={isAllTests || due.length === 0}
      active={step === 'tests' ? test : null}
      open={() => goTo('tests')}
      showAll={() => setAllTests(true)}
      focus={setTest}
      change={(next) => change({ tested: next })}
      onEnter={() => goTo('brix')}
    />
  )
  return (
    <>
      <div class="rows">
        <LevelRow
          typed={typed}
          sump={sump}
          shop={shop}
          field={levelField}
          type={type}
          onFocus={() => setStep('level')}
          onEnter={() => goTo('signs')}
          isActive={step === 'level'}
        />
        {verdict.faults
          .filter(({ field }) => field === 'level')
          .map((fault) => (
            <FaultWords fault={fault} />
          ))}
        <button type="button" class="row signs" aria-expanded={step === 'signs'} onClick={() => goTo('signs')}>
          <span class="row-label">{say('Look · smell · oil')}</span>
          <b>{saySeen(seen) || <span class="quiet">{say('not looked yet')}</span>}</b>
        </button>
      </div>
      {step === 'signs' && <Looks stop={stop} />}
      <AtOnce stop={stopsOf(seen)} comesIntoView />
      {!stop.isTestsBelow && testsRow}
      <BrixRow stop={stop} />
      {stop.isTestsBelow && testsRow}
    </>
  )
}

function Looks({ stop: { draft, change, goTo, afterLooks } }: { stop: StopState }) {
  const { seen } = draft
  return (
    <div class="looks">
      {senses.map(({ sense, legend, choices }) => (
        <Taps
          key={sense}
          legend={say(legend)}
          name={sense}
          value={seen[sense]}
          choices={choices.map(({ tap, words }) => [tap, say(words)])}
          onPick={(tap) => {
            const now = { ...seen, [sense]: tap }
            change({ seen: now })
            if (!isAllSeen(seen) && isAllSeen(now)) goTo(afterLooks)
          }}
        />
      ))}
    </div>
  )
}
