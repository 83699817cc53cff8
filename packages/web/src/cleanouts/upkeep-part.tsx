import { say, sayTask } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useSumps } from '../api/queries.ts'
import type { Book, Entry } from '../api/types.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { newId } from '../entry/uuid.ts'
import { SelectField, TextField } from '../fields/fields.tsx'
import { readPlain } from '../fields/read.ts'
import { dayIn } from '../say/when.ts'
import { Asking } from './asking.tsx'
import { type ProposedTask, type UpkeepLine, useUpkeep } from './asks.ts'
import { doneEntry, type ShopTask, shopTask, tasksEntry, withTasks } from './task-list.ts'

/** What comes back on its days: strainers, filters, skimming, checks, analyses. */
export function UpkeepPart({ book }: { book: Book }) {
  const upkeep = useUpkeep()
  const writing = useWriting()
  if (upkeep.data === undefined) return <Asking error={upkeep.error} />
  const { tasks, proposals } = upkeep.data
  const was = tasks.map(shopTask)
  const put = (entry: Entry, label: string) => void writing.write([{ entry, label }])
  const keep = (list: readonly ShopTask[]) => put(tasksEntry(list, was, stampNow()), say('Upkeep list'))
  const takeOn = (more: readonly ProposedTask[]) =>
    keep(withTasks(was, more.map(shopTask), dayIn(new Date().toISOString(), book.shop.timeZone)))
  return (
    <div class="upkeep">
      {writing.said !== '' && (
        <p class="note" role="status">
          {writing.said}
        </p>
      )}
      {tasks.length === 0 ? (
        <p class="intro">
          {say(
            'Nothing comes back by itself yet. Take on what your shop does from the proposals below, or add your own; what is due then stands on Today.',
          )}
        </p>
      ) : (
        <TaskList
          tasks={tasks}
          isBusy={writing.isBusy}
          done={(line) => {
            const entry = doneEntry(line, stampNow())
            if (entry !== null) put(entry, `${line.name}: ${sayTask(line.task)}`)
          }}
          change={(id, everyDays) => keep(was.map((task) => (task.id === id ? { ...task, everyDays } : task)))}
          drop={(id) => keep(was.filter((task) => task.id !== id))}
        />
      )}
      <OwnTask
        isBusy={writing.isBusy}
        add={(task) => keep(withTasks(was, [task], dayIn(new Date().toISOString(), book.shop.timeZone)))}
      />
      {proposals.length > 0 && (
        <details class="part" open={tasks.length === 0}>
          <summary>{say('Proposals')}</summary>
          <p class="intro">
            {say(
              'What shops do, and what your own records show to come back. The days are common practice, no source: take one on and change them.',
            )}
          </p>
          <div class="buttons">
            <button type="button" disabled={writing.isBusy} onClick={() => takeOn(proposals)}>
              {say('Take all of them on')}
            </button>
          </div>
          <ul class="task-list">
            {proposals.map((task) => (
              <li key={task.id}>
                <div>
                  <strong>{task.name}</strong> {sayTask(task.task)}
                  <div class="quiet">
                    {task.because === 'done before'
                      ? say('Every {days, plural, =1 {day} other {# days}}, as you have done it', {
                          days: task.everyDays,
                        })
                      : say('Every {days, plural, =1 {day} other {# days}}', { days: task.everyDays })}
                  </div>
                </div>
                <button type="button" disabled={writing.isBusy} onClick={() => takeOn([task])}>
                  {say('Take on')}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}

interface TaskListProps {
  tasks: readonly UpkeepLine[]
  isBusy: boolean
  done(line: UpkeepLine): void
  change(id: string, everyDays: number): void
  drop(id: string): void
}

function TaskList({ tasks, ...actions }: TaskListProps) {
  return (
    <ul class="task-list">
      {tasks.map((line) => (
        <TaskLine key={line.id} line={line} {...actions} />
      ))}
    </ul>
  )
}

function TaskLine({ line, isBusy, done, change, drop }: { line: UpkeepLine } & Omit<TaskListProps, 'tasks'>) {
  const [isOpen, setOpen] = useState(false)
  const [text, setText] = useState(String(line.everyDays))
  const read = readPlain(text, { min: 1, max: 1000 })
  const days = 'fault' in read ? null : read.value
  const isWhole = days !== null && Number.isInteger(days)
  return (
    <li class={line.isDue ? 'due' : ''}>
      <div>
        <strong>{line.name}</strong> {sayTask(line.task)}
        {line.isDue && <span class="tag do">{say('due')}</span>}
        <div class="quiet">{line.sentence}</div>
        {line.caution !== undefined && <div class="quiet">{line.caution}</div>}
        {isOpen && (
          <div class="task-change">
            <TextField
              numeric
              label={say('Every so many days')}
              value={text}
              onInput={setText}
              fault={
                'fault' in read
                  ? read.fault
                  : isWhole
                    ? null
                    : { found: text.trim() || say('nothing'), expected: say('a whole number of days') }
              }
            />
            <div class="buttons">
              <button
                type="button"
                class="main"
                disabled={isBusy || !isWhole}
                onClick={() => {
                  if (days === null) return
                  change(line.id, days)
                  setOpen(false)
                }}
              >
                {say('Keep')}
              </button>
              <button type="button" class="plain" disabled={isBusy} onClick={() => drop(line.id)}>
                {say('Do it no more')}
              </button>
            </div>
          </div>
        )}
      </div>
      <div class="task-buttons">
        <Done line={line} isBusy={isBusy} done={done} />
        <button type="button" class="plain" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {say('Change')}
        </button>
      </div>
    </li>
  )
}

/** What carries figures is written where they are typed. */
function Done({ line, isBusy, done }: Pick<TaskListProps, 'isBusy' | 'done'> & { line: UpkeepLine }) {
  if (line.counts === 'analysis') {
    return (
      <Link class="button" href="/water">
        {say('Write it down')}
      </Link>
    )
  }
  if (line.counts === 'check') {
    return (
      <Link class="button" href={line.about?.kind === 'mixer' ? '/mixing/mixer' : '/shop'}>
        {say('Write it down')}
      </Link>
    )
  }
  return (
    <button type="button" class={line.isDue ? 'main' : ''} disabled={isBusy} onClick={() => done(line)}>
      {say('Done')}
    </button>
  )
}

function OwnTask({ isBusy, add }: { isBusy: boolean; add(task: ShopTask): void }) {
  const sumps = useSumps().data ?? []
  const [texts, setTexts] = useState({ task: '', sump: '', days: '', caution: '' })
  const [isTried, setTried] = useState(false)
  const days = readPlain(texts.days, { min: 1, max: 1000 })
  const every = 'fault' in days ? null : days.value
  const isWhole = every !== null && Number.isInteger(every)
  const set = (key: keyof typeof texts) => (text: string) => setTexts({ ...texts, [key]: text })
  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if (texts.task.trim() === '' || every === null || !isWhole) return
    const { sump, caution } = texts
    add({
      id: newId(),
      task: texts.task.trim(),
      everyDays: every,
      ...(sump === '' ? {} : { sump }),
      ...(caution.trim() === '' ? {} : { caution: caution.trim() }),
    })
    setTexts({ task: '', sump: '', days: '', caution: '' })
    setTried(false)
  }
  const daysFault =
    'fault' in days ? days.fault : isTried && !isWhole ? say('Found nothing whole; expected a number of days.') : null
  return (
    <details class="part">
      <summary>{say('A task of your own')}</summary>
      <form class="tool-fields narrow" onSubmit={submit}>
        <TextField
          label={say('What was done, as it will be written')}
          value={texts.task}
          onInput={set('task')}
          hint={say('Such as: Strainer cleaned')}
          fault={isTried && texts.task.trim() === '' ? say('Found nothing; expected what is done.') : null}
        />
        <SelectField
          label={say('Where')}
          value={texts.sump}
          onInput={set('sump')}
          choices={[['', say('The shop')] as const, ...sumps.map((one) => [one.sump, one.name] as const)]}
        />
        <TextField
          numeric
          label={say('Every so many days')}
          value={texts.days}
          onInput={set('days')}
          fault={daysFault}
        />
        <TextField label={say('What to mind, if anything')} value={texts.caution} onInput={set('caution')} />
        <div class="buttons">
          <button type="submit" class="main" disabled={isBusy}>
            {say('Add it')}
          </button>
        </div>
      </form>
    </details>
  )
}
