import { say } from '@sumpbook/fluid'
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
    return error === null ? <p class="quiet">{say('One moment …')}</p> : <p class="fault">{error.message}</p>
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
      label={say('Sign in')}
      door
      texts={texts}
      send={send}
      button={say('Sign in')}
      isMain
      more={
        <>
          {provider !== null && (
            <a class="button" href={providerAddress}>
              {say('Sign in by {provider}', { provider })}
            </a>
          )}
          <button type="button" class="plain" onClick={code}>
            {say('I have a code')}
          </button>
        </>
      }
    >
      <h1>{say('Sign in')}</h1>
      {new URLSearchParams(location.search).has('error') && (
        <p class="fault" role="alert">
          {provider === null
            ? say('The provider knows you, but nobody is invited here under your verified mail address. Ask an owner.')
            : say('{provider} knows you, but nobody is invited here under your verified mail address. Ask an owner.', {
                provider,
              })}
        </p>
      )}
      <SignField label={say('Name or mail address')} kind="username" {...texts.field('login')} />
      <SignField label={say('Password')} kind="current-password" {...texts.field('password')} />
    </TextsForm>
  )
}

function Back({ back }: { back(): void }) {
  return (
    <button type="button" class="plain" onClick={back}>
      {say('Back')}
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
    <TextsForm
      label={say('One-time code')}
      door
      texts={texts}
      send={send}
      button={say('Go in')}
      isMain
      more={<Back back={back} />}
    >
      <h1>{say('One-time code')}</h1>
      <SignField
        label={say('Six digits from your app, or a spare code')}
        kind="one-time-code"
        {...texts.field('code')}
      />
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
      label={say('Come in by a code')}
      door
      texts={texts}
      send={send}
      button={say('Go in')}
      isMain
      more={<Back back={back} />}
    >
      <h1>{say('Come in by a code')}</h1>
      <p>{say('An owner of the book gave it to you. It is good once.')}</p>
      <SignField label={say('Code')} kind="off" {...texts.field('code')} />
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
    <TextsForm label={say('The first owner')} door texts={texts} send={send} button={say('Own this book')} isMain>
      <h1>{say('Nobody owns this book yet')}</h1>
      <p>
        {say(
          'Where Sumpbook was started, it printed a code. With it you become the book’s first owner; everybody else comes in by your invitation.',
        )}
      </p>
      <SignField label={say('Code')} kind="off" {...texts.field('code')} />
      <SignField label={say('Your name, as it stands beside your entries')} kind="name" {...texts.field('name')} />
      <Chosen field={texts.field} />
    </TextsForm>
  )
}

/** What somebody chooses who comes in for the first time. */
function Chosen({ field }: Pick<ReturnType<typeof useTexts<'login' | 'password'>>, 'field'>) {
  return (
    <>
      <SignField label={say('Name to sign in with, or your mail address')} kind="username" {...field('login')} />
      <SignField
        label={say('Password of your choice')}
        kind="new-password"
        {...field('password')}
        hint={say('At least ten characters; a few words are easier to remember than signs')}
      />
    </>
  )
}
