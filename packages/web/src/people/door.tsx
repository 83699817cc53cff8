import { useState } from 'preact/hooks'
import { firstRun, join, providerAddress, sendSecondFactor, signIn } from '../api/people.ts'
import { queries, useSession } from '../api/queries.ts'
import { SignField } from './sign-field.tsx'
import { useAsking } from './use-asking.ts'
import './people.css'

/** Everything is asked anew: who is in may see other things than who was. */
export const begin = () => queries.resetQueries()

/** The door of a book that asks for accounts: sign in, come in by a code, or be its first owner. */
export function Door() {
  const { data: session, error } = useSession()
  const [hasCode, setHasCode] = useState(() => location.pathname === '/join')
  if (session === undefined) {
    return error === null ? <p class="quiet">One moment …</p> : <p class="fault">{error.message}</p>
  }
  if (session.firstRun) return <FirstRun />
  return hasCode ? (
    <Join back={() => setHasCode(false)} />
  ) : (
    <SignIn provider={session.provider} code={() => setHasCode(true)} />
  )
}

function SignIn({ provider, code }: { provider: string | null; code(): void }) {
  const [login, setLogin] = useState('')
  const [password, setPassword] = useState('')
  const [wantsSecond, setWantsSecond] = useState(false)
  const asking = useAsking()
  const submit = async (event: Event) => {
    event.preventDefault()
    await asking.ask(async () => {
      const { secondFactor } = await signIn(login, password)
      if (secondFactor) setWantsSecond(true)
      else await begin()
    })
  }
  if (wantsSecond) return <SecondFactor back={() => setWantsSecond(false)} />
  return (
    <form class="door" aria-label="Sign in" onSubmit={(event) => void submit(event)}>
      <h1>Sign in</h1>
      {new URLSearchParams(location.search).has('error') && (
        <p class="fault" role="alert">
          {provider ?? 'The provider'} knows you, but nobody is invited here under your verified mail address. Ask an
          owner.
        </p>
      )}
      <SignField label="Name or mail address" kind="username" value={login} onInput={setLogin} />
      <SignField label="Password" kind="current-password" value={password} onInput={setPassword} />
      <Said asking={asking} />
      <div class="buttons">
        <button type="submit" class="main" disabled={asking.isBusy}>
          Sign in
        </button>
        {provider !== null && (
          <a class="button" href={providerAddress}>
            Sign in by {provider}
          </a>
        )}
        <button type="button" class="plain" onClick={code}>
          I have a code
        </button>
      </div>
    </form>
  )
}

function SecondFactor({ back }: { back(): void }) {
  const [code, setCode] = useState('')
  const asking = useAsking()
  const submit = async (event: Event) => {
    event.preventDefault()
    await asking.ask(async () => {
      await sendSecondFactor(code)
      await begin()
    })
  }
  return (
    <form class="door" aria-label="One-time code" onSubmit={(event) => void submit(event)}>
      <h1>One-time code</h1>
      <SignField
        label="Six digits from your app, or a spare code"
        kind="one-time-code"
        value={code}
        onInput={setCode}
      />
      <Said asking={asking} />
      <div class="buttons">
        <button type="submit" class="main" disabled={asking.isBusy}>
          Go in
        </button>
        <button type="button" class="plain" onClick={back}>
          Back
        </button>
      </div>
    </form>
  )
}

/** The password that somebody chooses, with what it must be. */
const chosen = 'At least ten characters; a few words are easier to remember than signs'

function Join({ back }: { back(): void }) {
  const [texts, setTexts] = useState({ code: '', login: '', password: '' })
  const asking = useAsking()
  const submit = async (event: Event) => {
    event.preventDefault()
    await asking.ask(async () => {
      await join(texts)
      await begin()
    })
  }
  return (
    <form class="door" aria-label="Come in by a code" onSubmit={(event) => void submit(event)}>
      <h1>Come in by a code</h1>
      <p>An owner of the book gave it to you. It is good once.</p>
      <SignField label="Code" kind="off" value={texts.code} onInput={(code) => setTexts({ ...texts, code })} />
      <SignField
        label="Name to sign in with, or your mail address"
        kind="username"
        value={texts.login}
        onInput={(login) => setTexts({ ...texts, login })}
        fault={asking.fault('login')}
      />
      <SignField
        label="Password of your choice"
        kind="new-password"
        value={texts.password}
        onInput={(password) => setTexts({ ...texts, password })}
        hint={chosen}
        fault={asking.fault('password')}
      />
      <Said asking={asking} />
      <div class="buttons">
        <button type="submit" class="main" disabled={asking.isBusy}>
          Go in
        </button>
        <button type="button" class="plain" onClick={back}>
          Back
        </button>
      </div>
    </form>
  )
}

function FirstRun() {
  const [texts, setTexts] = useState({ code: '', name: '', login: '', password: '' })
  const asking = useAsking()
  const submit = async (event: Event) => {
    event.preventDefault()
    await asking.ask(async () => {
      await firstRun(texts)
      await begin()
    })
  }
  return (
    <form class="door" aria-label="The first owner" onSubmit={(event) => void submit(event)}>
      <h1>Nobody owns this book yet</h1>
      <p>
        Where Sumpbook was started, it printed a code. With it you become the book’s first owner; everybody else comes
        in by your invitation.
      </p>
      <SignField label="Code" kind="off" value={texts.code} onInput={(code) => setTexts({ ...texts, code })} />
      <SignField
        label="Your name, as it stands beside your entries"
        kind="name"
        value={texts.name}
        onInput={(name) => setTexts({ ...texts, name })}
        fault={asking.fault('name')}
      />
      <SignField
        label="Name to sign in with, or your mail address"
        kind="username"
        value={texts.login}
        onInput={(login) => setTexts({ ...texts, login })}
        fault={asking.fault('login')}
      />
      <SignField
        label="Password of your choice"
        kind="new-password"
        value={texts.password}
        onInput={(password) => setTexts({ ...texts, password })}
        hint={chosen}
        fault={asking.fault('password')}
      />
      <Said asking={asking} />
      <div class="buttons">
        <button type="submit" class="main" disabled={asking.isBusy}>
          Own this book
        </button>
      </div>
    </form>
  )
}

/** What was said against a form as a whole. */
export function Said({ asking }: { asking: ReturnType<typeof useAsking> }) {
  return asking.rest === null ? null : (
    <p class="fault" role="alert">
      {asking.rest}
    </p>
  )
}
