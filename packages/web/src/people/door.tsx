import { say } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { firstRun, join, providerAddress, sendSecondFactor, signIn } from '../api/people.ts'
import { useSession } from '../api/queries.ts'
import { begin } from './begin.ts'
import { SignField } from './sign-field.tsx'
import { type Texts, TextsForm, useTexts } from './texts-form.tsx'
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

interface DoorFormProps {
  title: string
  /** What the form is called, where that is not its title. */
  label?: string
  texts: Texts
  /** Sends what was typed. @returns false where another question comes before one is in */
  send(): Promise<unknown>
  button: string
  /** The way back to what was asked before. */
  back?(): void
  /** Further buttons. */
  more?: ComponentChildren
  children: ComponentChildren
}

/** A form before the book: whoever it lets in begins. */
function DoorForm({ title, label = title, texts, send, button, back, more, children }: DoorFormProps) {
  return (
    <TextsForm
      label={label}
      door
      texts={texts}
      send={async () => {
        if ((await send()) !== false) await begin()
      }}
      button={button}
      isMain
      more={
        back === undefined ? (
          more
        ) : (
          <button type="button" class="plain" onClick={back}>
            {say('Back')}
          </button>
        )
      }
    >
      <h1>{title}</h1>
      {children}
    </TextsForm>
  )
}

function SignIn({ provider, code }: { provider: string | null; code(): void }) {
  const texts = useTexts({ login: '', password: '' })
  const [wantsSecond, setWantsSecond] = useState(false)
  const { login, password } = texts.texts
  const send = async () => {
    const { secondFactor } = await signIn(login, password)
    setWantsSecond(secondFactor)
    return !secondFactor
  }
  if (wantsSecond) return <SecondFactor back={() => setWantsSecond(false)} />
  return (
    <DoorForm
      title={say('Sign in')}
      texts={texts}
      send={send}
      button={say('Sign in')}
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
    </DoorForm>
  )
}

function SecondFactor({ back }: { back(): void }) {
  const texts = useTexts({ code: '' })
  const send = () => sendSecondFactor(texts.texts.code)
  return (
    <DoorForm title={say('One-time code')} texts={texts} send={send} button={say('Go in')} back={back}>
      <SignField
        label={say('Six digits from your app, or a spare code')}
        kind="one-time-code"
        {...texts.field('code')}
      />
    </DoorForm>
  )
}

function Join({ back }: { back(): void }) {
  const texts = useTexts({ code: '', login: '', password: '' })
  const send = () => join(texts.texts)
  return (
    <DoorForm title={say('Come in by a code')} texts={texts} send={send} button={say('Go in')} back={back}>
      <p>{say('An owner of the book gave it to you. It is good once.')}</p>
      <SignField label={say('Code')} kind="off" {...texts.field('code')} />
      <Chosen field={texts.field} />
    </DoorForm>
  )
}

function FirstRun() {
  const texts = useTexts({ code: '', name: '', login: '', password: '' })
  const send = () => firstRun(texts.texts)
  return (
    <DoorForm
      title={say('Nobody owns this book yet')}
      label={say('The first owner')}
      texts={texts}
      send={send}
      button={say('Own this book')}
    >
      <p>
        {say(
          'Where Sumpbook was started, it printed a code. With it you become the book’s first owner; everybody else comes in by your invitation.',
        )}
      </p>
      <SignField label={say('Code')} kind="off" {...texts.field('code')} />
      <SignField label={say('Your name, as it stands beside your entries')} kind="name" {...texts.field('name')} />
      <Chosen field={texts.field} />
    </DoorForm>
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
