import { useState } from 'preact/hooks'
import {
  beginSecondFactor,
  changePassword,
  changePin,
  confirmSecondFactor,
  endSecondFactor,
  keepSignedIn,
  makeToken,
  signOut,
} from '../api/people.ts'
import { queries, useSession } from '../api/queries.ts'
import { thisKept } from '../offline/this-kept.ts'
import { Said } from './door.tsx'
import { Sessions, Tokens } from './lines.tsx'
import { SignField } from './sign-field.tsx'
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
        <Pin />
      </Part>
      <Part id="password" title="Password">
        <Password />
      </Part>
      <Part id="second-factor" title="One-time codes">
        <SecondFactor />
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

/** A form of a few texts that are asked for, sent, and forgotten. */
function useTexts<Texts extends Record<string, string>>(empty: Texts) {
  const [texts, setTexts] = useState(empty)
  const [isDone, setDone] = useState(false)
  const asking = useAsking()
  return {
    texts,
    asking,
    isDone,
    field: (name: keyof Texts & string) => ({
      value: texts[name]!,
      onInput: (text: string) => setTexts({ ...texts, [name]: text }),
      fault: asking.fault(name),
    }),
    submit: (send: () => Promise<unknown>) => async (event: Event) => {
      event.preventDefault()
      setDone(false)
      if (!(await asking.ask(send))) return
      setTexts(empty)
      setDone(true)
      await queries.invalidateQueries({ queryKey: ['people'] })
    },
  }
}

function Row({ form, children, done }: { form: ReturnType<typeof useTexts>; children: string; done: string }) {
  return (
    <>
      <Said asking={form.asking} />
      {form.isDone && <p role="status">{done}</p>}
      <div class="buttons">
        <button type="submit" disabled={form.asking.isBusy}>
          {children}
        </button>
      </div>
    </>
  )
}

function KeepSignedIn() {
  const form = useTexts({ name: '' })
  return (
    <form
      aria-label="Stay signed in"
      onSubmit={(event) => void form.submit(() => keepSignedIn(form.texts.name))(event)}
    >
      <p class="quiet">
        For a phone of your own: two years, for reading and entries. It is listed below and can be ended there.
      </p>
      <SignField label="Name of the phone" kind="off" {...form.field('name')} />
      <Row form={form as never} done="This phone stays signed in.">
        Stay signed in
      </Row>
    </form>
  )
}

function Pin() {
  const form = useTexts({ pin: '', password: '' })
  const { pin, password } = form.texts
  return (
    <form
      aria-label="PIN"
      onSubmit={(event) => void form.submit(() => changePin(pin === '' ? null : pin, password))(event)}
    >
      <SignField label="PIN, 4 to 8 digits; empty takes it away" kind="pin" numeric {...form.field('pin')} />
      <SignField label="Your password" kind="current-password" {...form.field('password')} />
      <Row form={form as never} done="Written down.">
        Set the PIN
      </Row>
    </form>
  )
}

function Password() {
  const form = useTexts({ old: '', password: '' })
  return (
    <form
      aria-label="Password"
      onSubmit={(event) => void form.submit(() => changePassword(form.texts.old, form.texts.password))(event)}
    >
      <SignField label="The password now" kind="current-password" {...form.field('old')} />
      <SignField label="The new one, at least ten characters" kind="new-password" {...form.field('password')} />
      <Row form={form as never} done="Changed; your other sessions have ended.">
        Change the password
      </Row>
    </form>
  )
}

function SecondFactor() {
  const [begun, setBegun] = useState<{ uri: string; secret: string; spareCodes: string[] } | null>(null)
  const password = useTexts({ password: '' })
  const code = useTexts({ code: '' })
  if (begun !== null) {
    return (
      <form
        aria-label="The first one-time code"
        onSubmit={(event) => void code.submit(() => confirmSecondFactor(code.texts.code.trim()))(event)}
      >
        <p>
          Add this secret to an app for one-time codes, or <a href={begun.uri}>open the app with it</a>.
        </p>
        <p class="code-shown long">{begun.secret}</p>
        <p>Spare codes, each good once, for the day the phone is lost. They are not shown again:</p>
        <p class="code-shown long">{begun.spareCodes.join(' ')}</p>
        <SignField label="The six digits that the app shows now" kind="one-time-code" numeric {...code.field('code')} />
        <Row form={code as never} done="From now on a code is asked for after the password.">
          Turn them on
        </Row>
      </form>
    )
  }
  return (
    <form
      aria-label="One-time codes"
      onSubmit={(event) =>
        void password.submit(async () => setBegun(await beginSecondFactor(password.texts.password)))(event)
      }
    >
      <p class="quiet">A second thing that only you have: a password that was seen opens nothing then.</p>
      <SignField label="Your password" kind="current-password" {...password.field('password')} />
      <Said asking={password.asking} />
      {password.isDone && <p role="status">One-time codes are off.</p>}
      <div class="buttons">
        <button type="submit" disabled={password.asking.isBusy}>
          Begin
        </button>
        <button
          type="button"
          class="plain"
          disabled={password.asking.isBusy}
          onClick={(event) => void password.submit(() => endSecondFactor(password.texts.password))(event)}
        >
          Turn them off
        </button>
      </div>
    </form>
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
  const form = useTexts({ name: '' })
  const make = async () => {
    const { token } = await makeToken({ name: form.texts.name, scopes: scopes.split(' '), days: 365 })
    setMade(token)
  }
  return (
    <form aria-label="A token for a program" onSubmit={(event) => void form.submit(make)(event)}>
      <h3>A token for a program</h3>
      <SignField label="What it is for" kind="off" {...form.field('name')} />
      <div class="taps-row">
        {Object.entries(scopeWords).map(([value, words]) => (
          <label class={value === scopes ? 'tap here' : 'tap'}>
            <input type="radio" name="scopes" checked={value === scopes} onChange={() => setScopes(value)} />
            <span>{words}</span>
          </label>
        ))}
      </div>
      {made !== null && (
        <div class="note">
          <p>Good for a year, and not shown again:</p>
          <p class="code-shown long">{made}</p>
        </div>
      )}
      <Row form={form as never} done="Made.">
        Make a token
      </Row>
    </form>
  )
}
