import { say } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { SumpCalendar } from '../api/guidance.ts'
import { Said } from '../say/said.tsx'

/** What the packs say where the shop has chosen none: no figure is taken in their place. */
export function Unsettled({ lines }: { lines: SumpCalendar['unsettled'] }) {
  const conflicting = lines.filter(({ differs }) => differs)
  if (conflicting.length === 0) return null
  return (
    <>
      <p class="note">
        <Said
          text="No guidance is chosen, and sources differ: nothing is taken in its place. <page>Choose guidance under Shop</page>."
          parts={{ page: (inside) => <Link href="/shop/guidance">{inside}</Link> }}
        />
      </p>
      <details>
        <summary>{say('What the sources say')}</summary>
        <dl class="said-by">
          {conflicting.map(({ name, says }) => (
            <div key={name}>
              <dt>{name}</dt>
              {says.map(({ pack, text, source }) => (
                <dd key={pack}>
                  {text} <span class="quiet">{source}.</span>
                </dd>
              ))}
            </div>
          ))}
        </dl>
      </details>
    </>
  )
}
