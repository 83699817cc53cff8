import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useSession } from '../api/queries.ts'
import { isSignedIn, setWhoWrites, whoWrites } from '../entry/this-device.ts'
import { TextField } from '../fields/fields.tsx'

/** In whose name the round is written: who is signed in, or the initials that somebody types where nobody needs to be. */
export function WhoWrites() {
  const { data: session } = useSession()
  const [by, setBy] = useState(whoWrites)
  if (session?.person != null) {
    return (
      <p>
        Written as <strong>{session.person.name}</strong>
        {session.device?.kind === 'shared' && (
          <>
            {' '}
            · <Link href="/switch">somebody else is here</Link>
          </>
        )}
      </p>
    )
  }
  if (session?.device?.kind === 'shared') {
    return (
      <p class="note">
        Nobody has said who they are. <Link href="/switch">Say it first</Link>: without it nothing can be written here.
      </p>
    )
  }
  // Out of reach of the server the last answer counts: entries go out in that person's name.
  if (session === undefined && isSignedIn()) return null
  return (
    <TextField
      label="Who writes (initials)"
      value={by}
      onInput={(text) => {
        setBy(text)
        setWhoWrites(text)
      }}
      hint="Kept on this device and written beside each entry"
    />
  )
}
