import { say } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'

/** Up to so many lines nothing is folded. */
export const fewLines = 6

/** A line of the list that is no news: its name and what to do; a tap opens the rest. */
export function FoldedLine({
  name,
  headline,
  since,
  children,
}: {
  name: string
  headline: string
  since: string
  children: ComponentChildren
}) {
  const [isOpen, setOpen] = useState(false)
  return (
    <details class="folded-line" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h3>{name}</h3> {headline !== '' && <span>{headline}</span>}{' '}
        <span class="quiet">{say('since {since}', { since })}</span>
      </summary>
      {isOpen && children}
    </details>
  )
}
