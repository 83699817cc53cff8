import { say } from '@sumpbook/fluid'
import { useQuery } from '@tanstack/preact-query'
import { useState } from 'preact/hooks'
import { useLocation } from 'wouter-preact'
import { leaveDevice, readPeopleHere, switchTo } from '../api/people.ts'
import { useSession } from '../api/queries.ts'
import { flush } from '../entry/book-outbox.ts'
import { begin } from './begin.ts'
import { SignField } from './sign-field.tsx'
import { SaidAgainst } from './texts-form.tsx'
import { useAsking } from './use-asking.ts'
import './people.css'

/** On a shared device: who stands before it now, by PIN. */
export function SwitchPerson() {
  const session = useSession()
  const people = useQuery({ queryKey: ['device', 'people'], queryFn: readPeopleHere })
  const [, go] = useLocation()
  const [person, setPerson] = useState<{ id: string; name: string } | null>(null)
  const [pin, setPin] = useState('')
  const asking = useAsking()
  const enter = async (event: Event) => {
    event.preventDefault()
    const isIn = await asking.ask(() => switchTo(person!.id, pin))
    setPin('')
    if (!isIn) return
    await begin()
    await flush()
    go('/')
  }
  const leave = async () => {
    if (await asking.ask(leaveDevice)) await begin()
  }
  return (
    <div class="people-page">
      <h1>{say('Who is here?')}</h1>
      {people.error !== null && <p class="fault">{people.error.message}</p>}
      {session.data?.person != null && (
        <p>
          {say('Now it is {name}.', { name: session.data.person.name })}{' '}
          <button type="button" onClick={() => void leave()}>
            {say('Leave')}
          </button>
        </p>
      )}
      {people.data?.length === 0 && (
        <p>
          {say(
            'Nobody has a PIN yet. Each sets their own under Shop, My account, on a device where they are signed in.',
          )}
        </p>
      )}
      <ul class="switch-people">
        {people.data?.map((one) => (
          <li key={one.id}>
            <button
              type="button"
              class={one.id === person?.id ? 'main' : ''}
              aria-pressed={one.id === person?.id}
              onClick={() => setPerson(one)}
            >
              {one.name}
            </button>
          </li>
        ))}
      </ul>
      {person !== null && (
        <form aria-label={say('PIN of {name}', person)} onSubmit={(event) => void enter(event)}>
          <SignField label={say('PIN of {name}', person)} kind="pin" numeric value={pin} onInput={setPin} />
          <div class="buttons">
            <button type="submit" class="main" disabled={asking.isBusy || pin === ''}>
              {say('I am {name}', person)}
            </button>
          </div>
        </form>
      )}
      <SaidAgainst asking={asking} />
    </div>
  )
}
