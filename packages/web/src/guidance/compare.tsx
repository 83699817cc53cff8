import { say, sayNumber } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { GuidanceAnswer } from '../api/guidance.ts'

/** What each edition says of each thing, with its source; those that differ first. */
export function Compare({ data: { comparison } }: { data: GuidanceAnswer }) {
  const [isAll, setAll] = useState(false)
  const { editions, topics } = comparison
  const shown = topics.filter(({ differs }) => differs || isAll)
  return (
    <>
      {shown.map(({ name, differs, says }) => (
        <section key={name} class="compared" aria-label={name}>
          <h3>
            {name} {!differs && <span class="quiet">{say('no two differ')}</span>}
          </h3>
          <div class="columns">
            {says.map((rule, n) => (
              <div key={editions[n]!.name} class={rule === null ? 'says-nothing' : ''}>
                <div class="quiet">{editions[n]!.name}</div>
                {rule === null ? (
                  <p class="quiet">{say('we found nothing on it')}</p>
                ) : (
                  <>
                    <p>
                      <strong>{rule.text}</strong>
                    </p>
                    <p class="quiet">{rule.source}.</p>
                  </>
                )}
              </div>
            ))}
          </div>
        </section>
      ))}
      <div class="buttons">
        <button type="button" aria-pressed={isAll} onClick={() => setAll(!isAll)}>
          {isAll ? say('Only what differs') : say('All {count}', { count: sayNumber(topics.length, 0) })}
        </button>
      </div>
    </>
  )
}
