import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { signOut } from '../api/people.ts'
import { useWaiting } from '../entry/book-outbox.ts'
import { thisKept } from '../offline/this-kept.ts'
import type { useAsking } from './use-asking.ts'

/** Signs out; with entries that are only on this device it says first what becomes of them. */
export function SignOut({ asking }: { asking: ReturnType<typeof useAsking> }) {
  const count = useWaiting().length
  const [isAsked, setAsked] = useState(false)
  const leave = async () => {
    if (!(await asking.ask(signOut))) return
    await thisKept.forget()
    location.assign('/')
  }
  if (!isAsked || count === 0) {
    return (
      <div class="buttons">
        <button type="button" onClick={() => (count === 0 ? void leave() : setAsked(true))}>
          {say('Sign out')}
        </button>
      </div>
    )
  }
  return (
    <div class="note" role="alert">
      <p>
        {say(
          '{count, plural, one {One entry is} other {# entries are}} only on this device and not in the book yet. Signed out, the device keeps {count, plural, one {it} other {them}} and sends nothing; once somebody else signs in here, a keeper has to look at {count, plural, one {it} other {them}} first.',
          { count },
        )}
      </p>
      <div class="buttons">
        <button type="button" class="main" onClick={() => setAsked(false)}>
          {say('Stay signed in')}
        </button>
        <button type="button" onClick={() => void leave()}>
          {say('Sign out all the same')}
        </button>
      </div>
    </div>
  )
}
