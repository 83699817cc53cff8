import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useSession } from '../api/queries.ts'
import { isSignedIn, setWhoWrites, whoWrites } from '../entry/this-device.ts'
import { TextField } from '../fields/fields.tsx'
import { Said } from '../say/said.tsx'

/** In whose name the round is written: who is signed in, or the initials that somebody types where nobody needs to be. */
export function WhoWrites() {
  const { data: session } = useSession()
  const [by, setBy] = useState(whoWrites)
  if (session?.person != null) {
    return (
      <p>
        <Said
          text="Written as <strong>{name}</strong>"
          values={{ name: session.person.name }}
          parts={{ strong: (inside) => <strong>{inside}</strong> }}
        />
        {session.device?.kind === 'shared' && (
          <>
            {' '}
            · <Link href="/switch">{say('somebody else is here')}</Link>
          </>
        )}
      </p>
    )
  }
  if (session?.device?.kind === 'shared') {
    return (
      <p class="note">
        <Said
          text="Nobody has said who they are. <page>Say it first</page>: without it nothing can be written here."
          parts={{ page: (inside) => <Link href="/switch">{inside}</Link> }}
        />
      </p>
    )
  }
  // Out of reach of the server the last answer counts: entries go out in that person's name.
  if (session === undefined && isSignedIn()) return null
  return (
    <TextField
      label={say('Who writes (initials)')}
      value={by}
      onInput={(text) => {
        setBy(text)
        setWhoWrites(text)
      }}
      hint={say('Kept on this device and written beside each entry')}
    />
  )
}
