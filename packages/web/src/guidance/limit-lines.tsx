import type { LimitLine } from '../api/guidance.ts'

/** Each limit with the level and the source it comes from, and what other levels say. */
export function LimitLines({ limits }: { limits: readonly LimitLine[] }) {
  if (limits.length === 0) return <p class="quiet">Nobody has set a limit for it.</p>
  return (
    <ul class="limit-lines">
      {limits.map(({ quantity, end, text, levelName, source, refused, others }) => (
        <li key={`${quantity} ${end}`}>
          <strong>{text}</strong>{' '}
          <span class="quiet">
            by {levelName}: {source}.
          </span>
          {refused !== '' && <p class="note">{refused}</p>}
          {others.length > 0 && (
            <details>
              <summary>Others say</summary>
              <ul>
                {others.map((other) => (
                  <li key={`${other.level} ${other.text}`}>
                    {other.text}{' '}
                    <span class="quiet">
                      by {other.levelName}: {other.source}.
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
