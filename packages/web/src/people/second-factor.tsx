import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { beginSecondFactor, confirmSecondFactor, endSecondFactor } from '../api/people.ts'
import { queries } from '../api/queries.ts'
import { Said } from '../say/said.tsx'
import { SignField } from './sign-field.tsx'
import { TextsForm, useTexts } from './texts-form.tsx'

interface Begun {
  uri: string
  secret: string
  spareCodes: string[]
}

const isKnownAnew = () => queries.invalidateQueries({ queryKey: ['session'] })

/** One-time codes: begun with the password, on with the first code, off with the password again. */
export function SecondFactor({ isOn }: { isOn: boolean }) {
  const [begun, setBegun] = useState<Begun | null>(null)
  if (begun !== null && !isOn) return <Confirm begun={begun} back={() => setBegun(null)} />
  return isOn ? <TurnOff /> : <Start begin={setBegun} />
}

function Start({ begin }: { begin(begun: Begun): void }) {
  const texts = useTexts({ password: '' })
  const { password } = texts.texts
  return (
    <TextsForm
      label={say('One-time codes')}
      texts={texts}
      send={async () => begin(await beginSecondFactor(password))}
      button={say('Begin')}
      canSend={password !== ''}
    >
      <p class="quiet">
        {say(
          'A second thing that only you have: a password that was seen opens nothing then. You need an app for one-time codes on your phone.',
        )}
      </p>
      <SignField label={say('Your password')} kind="current-password" {...texts.field('password')} />
    </TextsForm>
  )
}

function Confirm({ begun: { uri, secret, spareCodes }, back }: { begun: Begun; back(): void }) {
  const texts = useTexts({ code: '' })
  const { code } = texts.texts
  const send = async () => {
    await confirmSecondFactor(code.replaceAll(/\s/g, ''))
    await isKnownAnew()
  }
  return (
    <TextsForm
      label={say('The first one-time code')}
      texts={texts}
      send={send}
      button={say('Turn them on')}
      isMain
      canSend={code.trim() !== ''}
      more={
        <button type="button" class="plain" onClick={back}>
          {say('Not now')}
        </button>
      }
    >
      <p>
        <Said
          text="1. Type this secret into an app for one-time codes, or <app>open the app with it</app>."
          parts={{ app: (inside) => <a href={uri}>{inside}</a> }}
        />
      </p>
      <p class="code-shown long">{secret.replaceAll(/(.{4})(?=.)/g, '$1 ')}</p>
      <p>
        {say(
          '2. Write down these spare codes for the day the phone is lost. Each is good once; they are not shown again.',
        )}
      </p>
      <ul class="spare-codes code-shown long">
        {spareCodes.map((spare) => (
          <li key={spare}>{spare}</li>
        ))}
      </ul>
      <SignField
        label={say('3. The six digits that the app shows now')}
        kind="one-time-code"
        numeric
        {...texts.field('code')}
      />
    </TextsForm>
  )
}

function TurnOff() {
  const texts = useTexts({ password: '' })
  const { password } = texts.texts
  const send = async () => {
    await endSecondFactor(password)
    await isKnownAnew()
  }
  return (
    <TextsForm
      label={say('One-time codes')}
      texts={texts}
      send={send}
      button={say('Turn them off')}
      canSend={password !== ''}
    >
      <p>{say('They are on: after your password you are asked for a code.')}</p>
      <SignField label={say('Your password')} kind="current-password" {...texts.field('password')} />
    </TextsForm>
  )
}
