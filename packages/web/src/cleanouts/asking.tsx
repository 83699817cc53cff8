import { say } from '@sumpbook/fluid'
import { OutOfReach } from '../api/client.ts'

/** While the book is asked, and where it does not answer. */
export function Asking({ error }: { error: Error | null }) {
  if (error === null) return <p class="quiet">{say('One moment …')}</p>
  return (
    <p class="fault" role="alert">
      {error instanceof OutOfReach
        ? say('The book is out of reach just now: no answer from its server.')
        : error.message}
    </p>
  )
}
