import { useState } from 'preact/hooks'
import { changePassword, changePin, keepSignedIn, makeToken, signOut } from '../api/people.ts'
import { queries, useSession } from '../api/queries.ts'
import { Taps } from '../fields/fields.tsx'
import { thisKept } from '../offline/this-kept.ts'
import { Sessions, Tokens } from './lines.tsx'
import { SecondFactor } from './second-factor.tsx'
import { SignField } from './sign-field.tsx'
import { Said, TextsForm, useTexts } from './texts-form.tsx'
import { useAsking } from './use-asking.ts'
import './people.css'

/** One's own account: where one is signed in, password, PIN, one-time codes, tokens. */
export function Account() {
  const { data: session } = useSession()
  const asking = useAsking()
  if (session === undefined) return <p class="quiet">One moment …</p>
  if (session.person === null) {
    return (
      <div class="people-page">
        <h1>My account</h1>
        <p>Nobody is signed in here, and on this machine nobody needs to be.</p>
      </div>
    )
  }
  const leave = async () => {
    if (!(await asking.ask(signOut))) return
    await thisKept.forget()
    location.assign('/')
  }
  if (session.by === 'token') {
    return (
      <div class="people-page">
        <h1>{session.person.name}</h1>
        <p>
          This device stays signed in ({session.device?.name}). To change password, PIN or tokens, sign in with your
          password on another device or in another browser.
        </p>
        {session.device?.kind === 'device' && (
          <div class="buttons">
            <button type="button" onClick={() => void leave()}>
              Sign out
            </button>
          </div>
        )}
        <Said asking={asking} />
      </div>
    )
  }
  return (
    <div class="people-page">
      <h1>{session.person.name}</h1>
      <p class="quiet">{session.role}</p>
      <div class="buttons">
        <button type="button" onClick={() => void leave()}>
          Sign out
        </button>
      </div>
      <Said asking={asking} />
      <Part id="sessions" title="Where I am signed in">
        <Sessions person={null} />
      </Part>
      <Part id="phone" title="Stay signed in on this phone">
        <KeepSignedIn />
      </Part>
      <Part id="pin" title="PIN for shared devices">
        <Pin hasOne={session.hasPin} />
      </Part>
      <Part id="password" title="Password">
        <Password />
      </Part>
      <Part id="second-factor" title="One-time codes">
        <SecondFactor isOn={session.secondFactor} />
      </Part>
      <Part id="tokens" title="Tokens and phones">
        <Tokens person={null} />
        <NewToken />
      </Part>
    </div>
  )
}

function Part({ id, title, children }: { id: string; title: string; children: preact.ComponentChildren }) {
  return (
    <section class="part" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  )
}

function KeepSignedIn() {
  const texts = useTexts({ name: '' })
  return (
    <TextsForm
      label="Stay signed in"
      texts={texts}
      send={() => keepSignedIn(texts.texts.name)}
      button="Stay signed in"
      canSend={texts.texts.name.trim() !== ''}
      done="This phone stays signed in."
    >
      <p class="quiet">
        For a phone of your own: two years, for reading and entries. It is listed below and can be ended there.
      </p>
      <SignField label="Name of the phone" kind="off" {...texts.field('name')} />
    </TextsForm>
  )
}

function Pin({ hasOne }: { hasOne: boolean }) {
  const texts = useTexts({ pin: '', password: '' })
  const { pin, password } = texts.texts
  const send = async () => {
    await changePin(pin === '' ? null : pin, password)
    await queries.invalidateQueries({ queryKey: ['session'] })
  }
  return (
    <TextsForm
      label="PIN"
      texts={texts}
      send={send}
      button={hasOne && pin === '' ? 'Take the PIN away' : hasOne ? 'Change the PIN' : 'Set the PIN'}
      canSend={password !== '' && (hasOne || pin !== '')}
      done="Written down."
    >
      <p class="quiet">
        {hasOne
          ? 'You have a PIN. Another one takes its place; with the field left empty it is taken away.'
          : 'With it you say on a tablet that many use that it is you.'}
      </p>
      <SignField label="PIN, 4 to 8 digits" kind="pin" numeric {...texts.field('pin')} />
      <SignField label="Your password" kind="current-password" {...texts.field('password')} />
    </TextsForm>
  )
}

function Password() {
  const texts = useTexts({ password: '', newPassword: '' })
  const { password, newPassword } = texts.texts
  return (
    <TextsForm
      label="Password"
      texts={texts}
      send={() => changePassword(password, newPassword)}
      button="Change the password"
      canSend={password !== '' && newPassword !== ''}
      done="Changed; your other sessions have ended."
    >
      <SignField label="The password now" kind="current-password" {...texts.field('password')} />
      <SignField label="The new one, at least ten characters" kind="new-password" {...texts.field('newPassword')} />
    </TextsForm>
  )
}

const scopeWords = {
  read: 'read',
  'read write': 'read and write entries',
  'read write manage': 'read, write, import and export',
}

function NewToken() {
  const [made, setMade] = useState<string | null>(null)
  const [scopes, setScopes] = useState('read')
  const texts = useTexts({ name: '' })
  const make = async () => {
    setMade(null)
    const { token } = await makeToken({ name: texts.texts.name, scopes: scopes.split(' '), days: 365 })
    setMade(token)
  }
  return (
    <TextsForm
      label="A token for a program"
      texts={texts}
      send={make}
      button="Make a token"
      canSend={texts.texts.name.trim() !== ''}
    >
      <h3>A token for a program</h3>
      <SignField label="What it is for" kind="off" {...texts.field('name')} />
      <Taps
        legend="What it may do"
        name="scopes"
        value={scopes}
        choices={Object.entries(scopeWords)}
        onPick={setScopes}
      />
      {made !== null && (
        <div class="note" role="status">
          <p>Good for a year, and not shown again:</p>
          <p class="code-shown long">{made}</p>
        </div>
      )}
    </TextsForm>
  )
}
