import { say } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import './parts.css'

/** A part of a place, at an address of its own. */
export interface PagePart {
  /** Its last word in the address; null for the first part, which has the place's own address. */
  id: string | null
  name: string
  show(): ComponentChildren
}

interface PartedPageProps {
  title: string
  /** "/mixing" */
  base: string
  parts: readonly PagePart[]
  /** As in the address. */
  part: string | null
  /** At the right of the title. */
  aside?: ComponentChildren
}

/** A place of several parts. A part that was opened stays as it was left while one looks at another: nothing typed is lost. */
export function PartedPage({ title, base, parts, part, aside }: PartedPageProps) {
  const [visited, setVisited] = useState<ReadonlySet<string | null>>(new Set())
  const here = parts.find(({ id }) => id === part)
  if (here !== undefined && !visited.has(part)) setVisited(new Set([...visited, part]))
  return (
    <div class="parted">
      <div class="page-head">
        <h1>{title}</h1>
        <span class="quiet">{aside}</span>
      </div>
      <nav class="parts" aria-label={say('Parts of {title}', { title })}>
        {parts.map(({ id, name }) => (
          <Link key={id} href={id === null ? base : `${base}/${id}`} aria-current={id === part ? 'page' : undefined}>
            {name}
          </Link>
        ))}
      </nav>
      {here === undefined && (
        <p>
          {say('{title} has no part “{part}”.', { title, part: String(part) })}{' '}
          <Link href={base}>{say('Go to {title}', { title })}</Link>
        </p>
      )}
      {parts
        .filter(({ id }) => id === part || visited.has(id))
        .map(({ id, name, show }) => (
          <section key={id} aria-label={name} hidden={id !== part}>
            {show()}
          </section>
        ))}
    </div>
  )
}
