import { say } from '@sumpbook/fluid'
import './jumps.css'

/** Where one part of a page begins. */
export interface Jump {
  /** The id of its heading. */
  id: string
  /** A message: it is said where it is shown. */
  name: string
}

/** A short list of the page's parts: on a phone the way to the last of them is long. */
export function Jumps({ jumps }: { jumps: readonly Jump[] }) {
  return (
    <nav class="jumps" aria-label={say('On this page')}>
      {jumps.map(({ id, name }) => (
        <a
          key={id}
          href={`#${id}`}
          onClick={(event) => {
            const part = document.getElementById(id)
            if (part === null) return
            // Without a place of its own among those one goes back to: back leads to where one came from.
            event.preventDefault()
            part.scrollIntoView()
            part.tabIndex = -1
            part.focus({ preventScroll: true })
          }}
        >
          {say(name)}
        </a>
      ))}
    </nav>
  )
}
