import { say, sayHours } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { Refusal } from '../api/client.ts'
import { useSumps } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { FaultWords, Taps } from '../fields/fields.tsx'
import { Said } from '../say/said.tsx'
import { sayTime, sayWhenShort } from '../say/when.ts'
import { clockIn, instantIn } from '../say/zone-time.ts'
import { Asking } from './asking.tsx'
import { type SideBySide, useSideBySide } from './asks.ts'

const most = 12

/** Several machines with few pumps and few people: when each of them stands. */
export function SideBySidePart({ book }: { book: Book }) {
  const { timeZone } = book.shop
  const { data: sumps = [], isPending } = useSumps()
  const [taken, setTaken] = useState<readonly string[]>([])
  const [people, setPeople] = useState('1')
  const [pumps, setPumps] = useState('1')
  const [start, setStart] = useState(() => `${clockIn(timeZone, Date.now() + 86_400_000).slice(0, 10)}T06:00`)
  const ms = instantIn(timeZone, start)
  const plan = useSideBySide(ms === null ? [] : taken, {
    people,
    pumps,
    start: ms === null ? '' : new Date(ms).toISOString(),
  })
  const turn = (id: string) => setTaken(taken.includes(id) ? taken.filter((one) => one !== id) : [...taken, id])
  const counts = ['1', '2', '3', '4'].map((n) => [n, n] as const)
  const refused = plan.error instanceof Refusal ? plan.error : null
  if (isPending) return <p class="quiet">{say('One moment …')}</p>
  return (
    <>
      <p class="intro">
        {say(
          'While cleaner circulates in one machine, the other is drained. The plan says when each of them stands, so that the last is done as early as can be.',
        )}
      </p>
      <div class="tool">
        <fieldset class="tool-fields machines">
          <legend>{say('Machines')}</legend>
          <ul class="check-list">
            {sumps.map(({ sump, name }) => (
              <li key={sump}>
                <label class="check">
                  <input
                    type="checkbox"
                    checked={taken.includes(sump)}
                    disabled={!taken.includes(sump) && taken.length >= most}
                    onChange={() => turn(sump)}
                  />
                  <span>{name}</span>
                </label>
              </li>
            ))}
          </ul>
          <Taps legend={say('People')} name="people" value={people} choices={counts} onPick={setPeople} />
          <Taps
            legend={say('Pumps or trucks to drain with')}
            name="pumps"
            value={pumps}
            choices={counts.slice(0, 3)}
            onPick={setPumps}
          />
          <label class="field">
            <span class="label">{say('From')}</span>
            <input type="datetime-local" value={start} onInput={({ currentTarget }) => setStart(currentTarget.value)} />
          </label>
        </fieldset>
        <section class="answer" aria-label={say('The plan')}>
          {taken.length === 0 && <p>{say('Tick the machines that are to be cleaned out.')}</p>}
          {refused !== null && (
            <FaultWords
              fault={say('One of them cannot be planned yet: {missing}. Plan it by itself first.', {
                missing: refused.problem.errors?.map(({ expected }) => expected).join('; ') ?? refused.message,
              })}
            />
          )}
          {taken.length > 0 &&
            refused === null &&
            (plan.data === undefined ? <Asking error={plan.error} /> : <PlanOf plan={plan.data} timeZone={timeZone} />)}
        </section>
      </div>
      {plan.data !== undefined && taken.length > 0 && (
        <p class="quiet">
          <Said
            text="Nights are not left out, and each machine goes by the plan the book makes for it. Open the sheets one by one under <plan>Plan</plan>."
            parts={{ plan: (inside) => <Link href="/cleanouts/plan">{inside}</Link> }}
          />
        </p>
      )}
    </>
  )
}

function PlanOf({ plan, timeZone }: { plan: SideBySide; timeZone: string }) {
  const now = new Date().toISOString()
  const when = (at: string) => sayWhenShort(at, { timeZone, now })
  const end = Math.max(...plan.machines.flatMap(({ stretches }) => stretches.map(({ to }) => to)), 0.1)
  return (
    <>
      <p class="headline" role="status">
        {plan.sentence}
      </p>
      <ol class="spans">
        {plan.machines.map((machine) => (
          <li key={machine.sump}>
            <strong>{machine.name}</strong>
            <span>
              {say('{start} to {finish}, {hours}', {
                start: when(machine.start),
                finish: when(machine.finish),
                hours: sayHours(machine.hours),
              })}
            </span>
            <div class="span-line" aria-hidden="true">
              {machine.stretches.map(({ name, from, to }) => (
                <span
                  key={`${name}${from}`}
                  class="stretch"
                  style={{ left: `${(100 * from) / end}%`, width: `${(100 * (to - from)) / end}%` }}
                />
              ))}
            </div>
            <details>
              <summary>{say('When what begins')}</summary>
              <ul>
                {machine.stretches.map(({ name, start, finish }) => (
                  <li key={`${name}${start}`}>
                    {sayTime(start, timeZone)}–{sayTime(finish, timeZone)} {name}
                  </li>
                ))}
              </ul>
            </details>
          </li>
        ))}
      </ol>
    </>
  )
}
