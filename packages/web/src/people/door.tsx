import { useState } from 'preact/hooks'
import { firstRun, join, providerAddress, sendSecondFactor, signIn } from '../api/people.ts'
import { useSession } from '../api/queries.ts'
import { begin } from './begin.ts'
import { SignField } from './sign-field.tsx'
import { TextsForm, useTexts } from './texts-form.tsx'
import './people.css'

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
  const texts = useTexts({ login: '', password: '' })
  const [wantsSecond, setWantsSecond] = useState(false)
  const { login, password } = texts.texts
  const send = async () => {
    const { secondFactor } = await signIn(login, password)
    if (secondFactor) setWantsSecond(true)
    else await begin()
  }
  if (wantsSecond) return <SecondFactor back={() => setWantsSecond(false)} />
  return (
    <TextsForm
      label="Sign in"
      door
      texts={texts}
      send={send}
      button="Sign in"
      isMain
      more={
        <>
          {provider !== null && (
            <a class="button" href={providerAddress}>
              Sign in by {provider}
            </a>
          )}
          <button type="button" class="plain" onClick={code}>
            I have a code
          </button>
        </>
      }
    >
      <h1>Sign in</h1>
      {new URLSearchParams(location.search).has('error') && (
        <p class="fault" role="alert">
          {provider ?? 'The provider'} knows you, but nobody is invited here under your verified mail address. Ask an
          owner.
        </p>
      )}
      <SignField label="Name or mail address" kind="username" {...texts.field('login')} />
      <SignField label="Password" kind="current-password" {...texts.field('password')} />
    </TextsForm>
  )
}

function Back({ back }: { back(): void }) {
  return (
    <button type="button" class="plain" onClick={back}>
      Back
    </button>
  )
}

function SecondFactor({ back }: { back(): void }) {
  const texts = useTexts({ code: '' })
  const send = async () => {
    await sendSecondFactor(texts.texts.code)
    await begin()
  }
  return (
    <TextsForm label="One-time code" door texts={texts} send={send} button="Go in" isMain more={<Back back={back} />}>
      <h1>One-time code</h1>
      <SignField label="Six digits from your app, or a spare code" kind="one-time-code" {...texts.field('code')} />
    </TextsForm>
  )
}

function Join({ back }: { back(): void }) {
  const texts = useTexts({ code: '', login: '', password: '' })
  const send = async () => {
    await join(texts.texts)
    await begin()
  }
  return (
    <TextsForm
      label="Come in by a code"
      door
      texts={texts}
      send={send}
      button="Go in"
      isMain
      more={<Back back={back} />}
    >
      <h1>Come in by a code</h1>
      <p>An owner of the book gave it to you. It is good once.</p>
      <SignField label="Code" kind="off" {...texts.field('code')} />
      <Chosen field={texts.field} />
    </TextsForm>
  )
}

function FirstRun() {
  const texts = useTexts({ code: '', name: '', login: '', password: '' })
  const send = async () => {
    await firstRun(texts.texts)
    await begin()
  }
  return (
    <TextsForm label="The first owner" door texts={texts} send={send} button="Own this book" isMain>
      <h1>Nobody owns this book yet</h1>
      <p>
        Where Sumpbook was started, it printed a code. With it you become the book’s first owner; everybody else comes
        in by your invitation.
      </p>
      <SignField label="Code" kind="off" {...texts.field('code')} />
      <SignField label="Your name, as it stands beside your entries" kind="name" {...texts.field('name')} />
      <Chosen field={texts.field} />
    </TextsForm>
  )
}

/** What somebody chooses who comes in for the first time. */
function Chosen({ field }: Pick<ReturnType<typeof useTexts<'login' | 'password'>>, 'field'>) {
  return (
    <>
      <SignField label="Name to sign in with, or your mail address" kind="username" {...field('login')} />
      <SignField
        label="Password of your choice"
        kind="new-password"
        {...field('password')}
        hint="At least ten characters; a few words are easier to remember than signs"
      />
    </>
  )
}
