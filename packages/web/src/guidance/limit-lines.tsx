import { say } from '@sumpbook/fluid'
import type { LimitLine } from '../api/guidance.ts'

/** Each limit with the level and the source it comes from, and what other levels say. */
export function LimitLines({ limits }: { limits: readonly LimitLine[] }) {
  if (limits.length === 0) return <p class="quiet">{say('Nobody has set a limit for it.')}</p>
  return (
    <ul class="limit-lines">
      {limits.map(({ quantity, end, text, levelName, source, refused, others }) => (
        <li key={`${quantity} ${end}`}>
          <strong>{text}</strong>{' '}
          <span class="quiet">{say('by {level}: {source}.', { level: levelName, source })}</span>
          {refused !== '' && <p class="note">{refused}</p>}
          {others.length > 0 && (
            <details>
              <summary>{say('Others say')}</summary>
              <ul>
                {others.map((other) => (
                  <li key={`${other.level} ${other.text}`}>
                    {other.text}{' '}
                    <span class="quiet">
                      {say('by {level}: {source}.', { level: other.levelName, source: other.source })}
                    </span>
                  </li>
                ))}
              </ul>
            </details>
          )}
        </li>
      ))}
    </ul>
  )
}
