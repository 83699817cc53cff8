import { costPartNames, say, sayCents } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { Book } from '../api/types.ts'
import { useSumpCost } from '../cost/cost-api.ts'
import { dayIn } from '../say/when.ts'

const parts = Object.keys(costPartNames) as (keyof typeof costPartNames)[]

/** What a sump cost in the last twelve months, by part, and what was not counted. */
export function SumpCost({ sump, shop, now }: { sump: string; shop: Book['shop']; now: string }) {
  const to = dayIn(now, shop.timeZone)
  const { data, error } = useSumpCost(sump, { from: yearBefore(to), to })
  return (
    <section aria-labelledby="cost" class="part">
      <h2 id="cost">{say('What it cost')}</h2>
      {data === undefined ? (
        <p class="quiet">{error === null ? say('Adding up …') : error.message}</p>
      ) : (
        <>
          {data.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          {data.cents > 0 && (
            <dl class="pairs">
              {parts
                .filter((part) => data.parts[part] > 0)
                .map((part) => (
                  <>
                    <dt>{say(costPartNames[part].title)}</dt>
                    <dd>{sayCents(data.parts[part], shop)}</dd>
                  </>
                ))}
            </dl>
          )}
          {data.gaps.length > 0 && (
            <details>
              <summary>{say('Not counted')}</summary>
              <ul>
                {data.gaps.map(({ what, text }) => (
                  <li key={what}>{text}</li>
                ))}
              </ul>
            </details>
          )}
          <p class="no-print">
            <Link class="button plain" href="/stock/cost">
              {say('Beside the others, month by month')}
            </Link>
          </p>
        </>
      )}
    </section>
  )
}

/** The day after that of a year before: twelve months up to a day. */
const yearBefore = (day: string) =>
  new Date(Date.UTC(Number(day.slice(0, 4)) - 1, Number(day.slice(5, 7)) - 1, Number(day.slice(8)) + 1))
    .toISOString()
    .slice(0, 10)
