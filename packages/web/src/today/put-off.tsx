import { putOffReasons, recordedReason, say, sayNumber, sayReason, takenUpAgain } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Entry, Snoozed, TodayDue, TodayItem } from '../api/types.ts'
import { snoozeEntry, voidEntry } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { DayField, Taps, TextField } from '../fields/fields.tsx'
import { sayDay, sayWhenShort } from '../say/when.ts'
import { type EndChoice, endOf, longestDays } from './until.ts'

/** What a line is, as far as putting it off goes. */
export interface Puttable {
  key: string
  name: string
  sump: string | null
  about?: TodayDue['about']
}

/** When the list was made, and where. */
export interface ListTime {
  /** RFC 3339. */
  at: string
  timeZone: string
  shiftEnds: string
}

/** Why something is put off, and until when; both are asked for, since the record keeps them. */
export function PutOffForm({
  line,
  time,
  write,
  cancel,
}: {
  line: Puttable
  time: ListTime
  write(build: (stamp: Stamp) => Entry[]): void
  cancel(): void
}) {
  const [why, setWhy] = useState('')
  const [choice, setChoice] = useState<EndChoice>('shift')
  const [day, setDay] = useState('')
  const [isTried, setTried] = useState(false)
  const until = endOf(choice, { now: time.at, shiftEnds: time.shiftEnds, timeZone: time.timeZone, day })
  return (
    <form
      class="pour-form put-off-form"
      aria-label={say('Put off: {name}', { name: line.name })}
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (why.trim() === '' || until === null) return
        write((stamp) => [snoozeEntry(line, { why: recordedReason(why.trim(), putOffReasons), until }, stamp)])
      }}
    >
      <TextField
        label={say('Why is it put off?')}
        value={why}
        onInput={setWhy}
        list={putOffReasons.map((one) => say(one))}
        fault={
          isTried && why.trim() === '' ? say('Found nothing; expected a reason: it stands beside the line.') : null
        }
      />
      <Taps
        legend={say('Until when?')}
        name={`until-${line.key}`}
        value={choice}
        choices={[
          ['shift', say('the next shift')],
          ['tomorrow', say('tomorrow')],
          ['week', say('a week')],
          ['day', say('another day')],
        ]}
        onPick={(picked) => setChoice(picked as EndChoice)}
      />
      {choice === 'day' && (
        <DayField
          label={say('The day on which it is back')}
          value={day}
          onInput={setDay}
          fault={isTried && until === null ? dayFault(day) : null}
        />
      )}
      <div class="buttons">
        <button type="submit" class="main">
          {say('Put it off')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </form>
  )
}

function dayFault(day: string): string {
  const days = sayNumber(longestDays, 0)
  return day === ''
    ? say('Found nothing; expected a day from tomorrow on, at most {days} days ahead.', { days })
    : say('Found {day}; expected a day from tomorrow on, at most {days} days ahead.', { day, days })
}

/** What was put off, with its reason and its end; a tap brings it back. */
export function PutOffLines({
  putOff: { items, due },
  time,
  write,
}: {
  putOff: { items: readonly TodayItem[]; due: readonly TodayDue[] }
  time: ListTime
  write(name: string, build: (stamp: Stamp) => Entry[]): void
}) {
  const lines = [
    ...items.map(({ name, words, snoozed, sump }) => ({ name, headline: words.headline, snoozed, sump })),
    ...due.map(({ name, headline, snoozed, sump }) => ({ name, headline, snoozed, sump })),
  ]
  if (lines.length === 0) return null
  return (
    <details class="put-off">
      <summary>{say('{count} put off', { count: sayNumber(lines.length, 0) })}</summary>
      <ul>
        {lines.map(
          ({ name, headline, snoozed, sump }) =>
            snoozed !== null && (
              <li>
                <p>
                  <strong>{name}</strong>: {headline}. {saySnoozed(snoozed, time)}
                </p>
                <button
                  type="button"
                  class="plain"
                  onClick={() => write(name, (stamp) => [voidEntry(snoozed.entry, takenUpAgain, sump, stamp)])}
                >
                  {say('Bring it back')}
                </button>
              </li>
            ),
        )}
      </ul>
    </details>
  )
}

/** "Put off until Fri 6 Mar: part is on its way." */
function saySnoozed({ why, until }: Snoozed, { at, timeZone }: ListTime): string {
  const isMidnight = sayWhenShort(until, { timeZone, now: at }).endsWith(' 00:00')
  const end = isMidnight ? sayDay(until, timeZone, at) : sayWhenShort(until, { timeZone, now: at })
  return why === ''
    ? say('Put off until {end}.', { end })
    : say('Put off until {end}: {why}.', { end, why: sayReason(why) })
}
