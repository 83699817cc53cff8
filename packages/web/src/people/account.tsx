import { message, say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { changePassword, changePin, keepSignedIn, makeToken } from '../api/people.ts'
import { queries, useSession } from '../api/queries.ts'
import { Taps } from '../fields/fields.tsx'
import { Sessions, Tokens } from './lines.tsx'
import { roleNames } from './role-names.ts'
import { SecondFactor } from './second-factor.tsx'
import { SignField } from './sign-field.tsx'
import { SignOut } from './sign-out.tsx'
import { SaidAgainst, TextsForm, useTexts } from './texts-form.tsx'
import { useAsking } from './use-asking.ts'
import './people.css'

/** One's own account: where one is signed in, password, PIN, one-time codes, tokens. */
export function Account() {
  const { data: session } = useSession()
  const asking = useAsking()
  if (session === undefined) return <p class="quiet">{say('One moment …')}</p>
  if (session.person === null) {
    return (
      <div class="people-page">
        <h1>{say('My account')}</h1>
        <p>{say('Nobody is signed in here, and on this machine nobody needs to be.')}</p>
      </div>
    )
  }
  if (session.by === 'token') {
    return (
      <div class="people-page">
        <h1>{session.person.name}</h1>
        <p>
          {say(
            'This device stays signed in ({device}). To change password, PIN or tokens, sign in with your password on another device or in another browser.',
            { device: session.device?.name ?? '' },
          )}
        </p>
        {session.device?.kind === 'device' && <SignOut asking={asking} />}
        <SaidAgainst asking={asking} />
      </div>
    )
  }
  return (
    <div class="people-page">
      <h1>{session.person.name}</h1>
      <p class="quiet">{session.role !== null && say(roleNames[session.role])}</p>
      <SignOut asking={asking} />
      <SaidAgainst asking={asking} />
      <Part id="sessions" title={say('Where I am signed in')}>
        <Sessions person={null} />
      </Part>
      <Part id="phone" title={say('Stay signed in on this phone')}>
        <KeepSignedIn />
      </Part>
      <Part id="pin" title={say('PIN for shared devices')}>
        <Pin hasOne={session.hasPin} />
      </Part>
      <Part id="password" title={say('Password')}>
        <Password />
      </Part>
      <Part id="second-factor" title={say('One-time codes')}>
        <SecondFactor isOn={session.secondFactor} />
      </Part>
      <Part id="tokens" title={say('Tokens and phones')}>
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
      label={say('Stay signed in')}
      texts={texts}
      send={() => keepSignedIn(texts.texts.name)}
      button={say('Stay signed in')}
      canSend={texts.texts.name.trim() !== ''}
      done={say('This phone stays signed in.')}
    >
      <p class="quiet">
        {say('For a phone of your own: two years, for reading and entries. It is listed below and can be ended there.')}
      </p>
      <SignField label={say('Name of the phone')} kind="off" {...texts.field('name')} />
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
      label={say('PIN')}
      texts={texts}
      send={send}
      button={hasOne && pin === '' ? say('Take the PIN away') : hasOne ? say('Change the PIN') : say('Set the PIN')}
      canSend={password !== '' && (hasOne || pin !== '')}
      done={say('Written down.')}
    >
      <p class="quiet">
        {hasOne
          ? say('You have a PIN. Another one takes its place; with the field left empty it is taken away.')
          : say('With it you say on a tablet that many use that it is you.')}
      </p>
      <SignField label={say('PIN, 4 to 8 digits')} kind="pin" numeric {...texts.field('pin')} />
      <SignField label={say('Your password')} kind="current-password" {...texts.field('password')} />
    </TextsForm>
  )
}

function Password() {
  const texts = useTexts({ password: '', newPassword: '' })
  const { password, newPassword } = texts.texts
  return (
    <TextsForm
      label={say('Password')}
      texts={texts}
      send={() => changePassword(password, newPassword)}
      button={say('Change the password')}
      canSend={password !== '' && newPassword !== ''}
      done={say('Changed; your other sessions have ended.')}
    >
      <SignField label={say('The password now')} kind="current-password" {...texts.field('password')} />
      <SignField
        label={say('The new one, at least ten characters')}
        kind="new-password"
        {...texts.field('newPassword')}
      />
    </TextsForm>
  )
}

const scopeWords = {
  read: message('read'),
  'read write': message('read and write entries'),
  'read write manage': message('read, write, import and export'),
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
      label={say('A token for a program')}
      texts={texts}
      send={make}
      button={say('Make a token')}
      canSend={texts.texts.name.trim() !== ''}
    >
      <h3>{say('A token for a program')}</h3>
      <SignField label={say('What it is for')} kind="off" {...texts.field('name')} />
      <Taps
        legend={say('What it may do')}
        name="scopes"
        value={scopes}
        choices={Object.entries(scopeWords).map(([one, words]) => [one, say(words)] as const)}
        onPick={setScopes}
      />
      {made !== null && (
        <div class="note" role="status">
          <p>{say('Good for a year, and not shown again:')}</p>
          <p class="code-shown long">{made}</p>
        </div>
      )}
    </TextsForm>
  )
}
