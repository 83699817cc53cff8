import { type SaidCause, type SaidDiagnosis, say, sayChance } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'

const shownAtFirst = 4

/** Causes in their order, each with its reasons, and the test that would tell most. */
export function Causes({ causes, nextCheck, notes }: Pick<SaidDiagnosis, 'causes' | 'nextCheck' | 'notes'>) {
  const [isAll, setAll] = useState(false)
  const shown = isAll ? causes : causes.slice(0, shownAtFirst)
  return (
    <section aria-labelledby="causes" class="part" aria-live="polite">
      <h2 id="causes">{say('What may be behind it')}</h2>
      {nextCheck !== null && (
        <p class="next-check">
          <b>{say('Test next.')}</b> {nextCheck.text}
        </p>
      )}
      <ol class="causes">
        {shown.map((cause) => (
          <CauseOf key={cause.cause} {...cause} />
        ))}
      </ol>
      {shown.length < causes.length && (
        <button type="button" class="plain" onClick={() => setAll(true)}>
          {say('{count, plural, one {# less likely one} other {# less likely ones}}', {
            count: causes.length - shown.length,
          })}
        </button>
      )}
      {notes.map((note) => (
        <p class="quiet" key={note}>
          {note}
        </p>
      ))}
    </section>
  )
}

function CauseOf({ name, says, probability, because, checks, remedies }: SaidCause) {
  return (
    <li>
      <h3>
        {name} <span class="chance">{sayChance(probability)}</span>
      </h3>
      <span class="weight" aria-hidden="true">
        <i style={`width:${(100 * probability).toFixed(0)}%`} />
      </span>
      <p>{says}</p>
      <ul class="reasons">
        {because.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      <details>
        <summary>{say('To confirm it, and what helps')}</summary>
        <ul>
          {checks.map((check) => (
            <li key={check}>{check}</li>
          ))}
        </ul>
        <ul>
          {remedies.map((remedy) => (
            <li key={remedy}>{remedy}</li>
          ))}
        </ul>
      </details>
    </li>
  )
}
