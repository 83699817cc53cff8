import { datesLocale, message, say } from '@sumpbook/fluid'
import { useQuery } from '@tanstack/preact-query'
import { useState } from 'preact/hooks'
import {
  type Account,
  changePerson,
  endDevice,
  type Invitation,
  invite,
  newCode,
  type Role,
  readDevices,
  readPeople,
  shareThisDevice,
} from '../api/people.ts'
import { queries, useSession } from '../api/queries.ts'
import { SelectField } from '../fields/fields.tsx'
import { Sessions, TokenRow, Tokens } from './lines.tsx'
import { roleNames } from './role-names.ts'
import { SignField } from './sign-field.tsx'
import { SaidAgainst } from './texts-form.tsx'
import { useAsking } from './use-asking.ts'
import './people.css'

const roleWords: Record<Role, string> = {
  reader: message('reader: sees'),
  operator: message('operator: makes entries'),
  keeper: message('keeper: also sets up, doses additives, withdraws, imports, exports'),
  owner: message('owner: also people'),
}
const roles = Object.keys(roleWords) as Role[]
const choices = (some: readonly Role[]) => some.map((role) => [role, say(roleWords[role])] as const)

/** Who may do what, and on which devices. Owners change it; others see who is who. */
export function People() {
  const session = useSession()
  const people = useQuery({ queryKey: ['people'], queryFn: readPeople })
  const isOwner = session.data?.role === 'owner'
  return (
    <div class="people-page">
      <h1>{say('People')}</h1>
      {session.data?.accounts === false && (
        <p class="note">
          {say(
            'On this machine alone no account is needed. Once the book is opened to the network, everybody signs in; invite them here before, or let the first owner do it.',
          )}
        </p>
      )}
      {people.error !== null && <p class="fault">{people.error.message}</p>}
      {people.data?.length === 0 && <p>{say('Nobody has an account yet.')}</p>}
      {people.data?.map((person) =>
        isOwner ? <PersonLine key={person.id} person={person} /> : <PersonName key={person.id} person={person} />,
      )}
      {isOwner && <Invite />}
      {isOwner && <Devices canShareThis={session.data?.accounts === true} />}
    </div>
  )
}

function PersonName({ person: { name, role } }: { person: Account }) {
  return (
    <div class="person-line">
      <strong>{name}</strong>
      <span class="quiet">{say(roleNames[role])}</span>
    </div>
  )
}

const again = () => queries.invalidateQueries({ queryKey: ['people'] })

function PersonLine({ person }: { person: Account }) {
  const { id, name, role, login = null, closedAt = null, secondFactor } = person
  const [isOpen, setOpen] = useState(false)
  const [invitation, setInvitation] = useState<Invitation | null>(null)
  const asking = useAsking()
  const change = async (changes: { role?: Role; closed?: boolean }) => {
    if (await asking.ask(() => changePerson(id, changes))) await again()
  }
  const said = [
    say(roleNames[role]),
    login ?? say('has not come yet'),
    secondFactor === true ? say('second factor') : '',
    closedAt === null ? '' : say('closed'),
  ]
  return (
    <section aria-label={name}>
      <div class="person-line">
        <span>
          <strong class={closedAt === null ? '' : 'struck'}>{name}</strong>
          <span class="quiet">{said.filter((part) => part !== '').join(' · ')}</span>
        </span>
        <button
          type="button"
          class="plain"
          aria-expanded={isOpen}
          aria-label={say('Change {name}', { name })}
          onClick={() => setOpen(!isOpen)}
        >
          {isOpen ? say('Done') : say('Change')}
        </button>
      </div>
      {isOpen && (
        <div class="person-more">
          <SelectField
            label={say('Role')}
            value={role}
            choices={choices(roles)}
            onInput={(chosen) => void change({ role: chosen as Role })}
          />
          <div class="buttons">
            {closedAt === null && (
              <button
                type="button"
                disabled={asking.isBusy}
                onClick={() => void asking.ask(async () => setInvitation(await newCode(id)))}
              >
                {say('New code')}
              </button>
            )}
            <button type="button" disabled={asking.isBusy} onClick={() => void change({ closed: closedAt === null })}>
              {closedAt === null ? say('Close the account') : say('Open it again')}
            </button>
          </div>
          {invitation !== null && <CodeShown name={name} invitation={invitation} />}
          <SaidAgainst asking={asking} />
          <h3>{say('Signed in')}</h3>
          <Sessions person={id} />
          <h3>{say('Tokens and phones')}</h3>
          <Tokens person={id} />
        </div>
      )}
    </section>
  )
}

/** The one time a code is seen. */
function CodeShown({ name, invitation: { code, expires } }: { name: string; invitation: Invitation }) {
  return (
    <div class="note" role="status">
      <p>
        {say('The code for {name}, good once, until {day}. It is not shown again.', {
          name,
          day: new Date(expires).toLocaleDateString(datesLocale(), { dateStyle: 'long' }),
        })}
      </p>
      <p class="code-shown">{code}</p>
      <p class="quiet">{say('They open {address} and type it.', { address: `${location.origin}/join` })}</p>
    </div>
  )
}

function Invite() {
  const [name, setName] = useState('')
  const [role, setRole] = useState<Role>('operator')
  const [made, setMade] = useState<{ name: string; invitation: Invitation } | null>(null)
  const asking = useAsking()
  const submit = async (event: Event) => {
    event.preventDefault()
    const isDone = await asking.ask(async () => setMade({ name, invitation: await invite(name, role) }))
    if (!isDone) return
    setName('')
    await again()
  }
  return (
    <section class="part" aria-labelledby="invite">
      <h2 id="invite">{say('Invite somebody')}</h2>
      <form aria-label={say('Invite somebody')} onSubmit={(event) => void submit(event)}>
        <SignField
          label={say('Name, as it stands beside their entries')}
          kind="off"
          value={name}
          onInput={setName}
          fault={asking.fault('name')}
        />
        <SelectField
          label={say('Role')}
          value={role}
          choices={choices(roles)}
          onInput={(chosen) => setRole(chosen as Role)}
        />
        <SaidAgainst asking={asking} />
        <div class="buttons">
          <button type="submit" class="main" disabled={asking.isBusy || name.trim() === ''}>
            {say('Make a code')}
          </button>
        </div>
      </form>
      {made !== null && <CodeShown {...made} />}
    </section>
  )
}

function Devices({ canShareThis }: { canShareThis: boolean }) {
  const key = ['devices']
  const devices = useQuery({ queryKey: key, queryFn: readDevices })
  const [name, setName] = useState('')
  const [role, setRole] = useState<Role>('operator')
  const asking = useAsking()
  const end = async (id: string) => {
    if (await asking.ask(() => endDevice(id))) await queries.invalidateQueries({ queryKey: key })
  }
  const share = async (event: Event) => {
    event.preventDefault()
    if (!(await asking.ask(() => shareThisDevice(name, role)))) return
    setName('')
    await queries.invalidateQueries({ queryKey: key })
  }
  return (
    <section class="part" aria-labelledby="devices">
      <h2 id="devices">{say('Phones and shared devices')}</h2>
      {devices.data?.length === 0 && <p class="quiet">{say('None yet.')}</p>}
      {devices.data?.map((token) => (
        <TokenRow key={token.id} token={token} isBusy={asking.isBusy} end={() => void end(token.id)} />
      ))}
      {canShareThis && (
        <form aria-label={say('Make this a shared device')} onSubmit={(event) => void share(event)}>
          <h3>{say('Make this a shared device')}</h3>
          <p class="quiet">
            {say(
              'For a tablet in the shop: it shows the book, and people say by PIN who they are before they write. Sign out on it afterwards.',
            )}
          </p>
          <SignField label={say('Name of the device')} kind="off" value={name} onInput={setName} />
          <SelectField
            label={say('What can be done on it at most')}
            value={role}
            choices={choices(['reader', 'operator', 'keeper'])}
            onInput={(chosen) => setRole(chosen as Role)}
          />
          <SaidAgainst asking={asking} />
          <div class="buttons">
            <button type="submit" disabled={asking.isBusy || name.trim() === ''}>
              {say('Share this device')}
            </button>
          </div>
        </form>
      )}
    </section>
  )
}
