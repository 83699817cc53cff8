import { say, sayConcentration, sayPercent, sayReasons } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { ShopOfBook, SumpNow } from '../api/types.ts'
import { BandLine } from '../band-line/band-line.tsx'
import { isPour } from '../entry/entries.ts'
import { Cautions } from '../parts/cautions.tsx'
import { readerOf } from '../say/units.ts'
import { sayWhenShort } from '../say/when.ts'
import type { Verdict } from './verdict.ts'

/** What follows from the reading, worked out here and now. */
export function Say({
  verdict,
  sump,
  shop,
  notes,
  signs,
  isAsked,
}: {
  verdict: Verdict
  sump: SumpNow
  shop: ShopOfBook
  notes: readonly string[]
  /** What the look, the smell and the oil say to mind: before any recipe. */
  signs: readonly string[]
  isAsked: boolean
}) {
  const { concentration, stands, advice } = verdict
  const reader = readerOf(shop.units)
  // Where it stands in its band is said beside the strength.
  const said = sayReasons(['lean', 'rich'])
  const words = isAsked ? null : (advice?.words ?? null)
  return (
    <div class="say" aria-live="polite">
      {concentration !== null && (
        <p>
          <b>{sayConcentration(concentration, reader)}</b>
          {stands !== '' && `, ${stands}`}.
        </p>
      )}
      {signs.map((note) => (
        <p class="note">{note}</p>
      ))}
      {words !== null && (
        <>
          <p class="headline">{words.headline}</p>
          <WhereEntered sump={sump} />
          {words.how !== '' && <p class="how">{words.how}</p>}
          {words.outcome !== '' && <p class="how">{words.outcome}</p>}
          {words.because
            .filter((sentence) => !said.includes(sentence))
            .map((sentence) => (
              <p class="quiet">{sentence}</p>
            ))}
          {advice?.recipe.action === 'change' && (
            <p class="note">{say('This is a cleanout: drain, clean, rinse, fill. It is not one tap.')}</p>
          )}
        </>
      )}
      {notes.map((note) => (
        <p class="note">{note}</p>
      ))}
      {words !== null && concentration !== null && (
        <BandLine
          band={sump.bench.band}
          target={sump.bench.target}
          now={concentration}
          after={advice !== null && isPour(advice.recipe) ? (advice.recipe.result?.concentration ?? null) : null}
        />
      )}
      {words !== null && <Cautions cautions={words.cautions} />}
      {advice !== null && !isAsked && advice.alternatives.length > 0 && (
        <details>
          <summary>{say('Other ways')}</summary>
          <ul class="ways">
            {advice.alternatives.map((way) => (
              <li>{way}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}

/** What the book lacks for a recipe here, each a tap from where it is entered; what was typed here stays. */
function WhereEntered({ sump: { sump, fluid, bench } }: { sump: SumpNow }) {
  const ofFluid = `/shop#fluid-${encodeURIComponent(fluid.id)}`
  const lacks: (readonly [lacks: boolean, page: string, words: string])[] = [
    [bench.fillVolume === null, `/shop#sump-${encodeURIComponent(sump)}`, say('Enter the full mark')],
    [bench.brixChart === null && bench.brixFactor === null, ofFluid, say('Enter the factor')],
    [bench.target === null, ofFluid, say('Enter the band')],
  ]
  const shown = lacks.filter(([isLacking]) => isLacking)
  return shown.length === 0 ? null : (
    <p class="where-entered">
      {shown.map(([, page, words]) => (
        <Link class="button" href={page}>
          {words}
        </Link>
      ))}
    </p>
  )
}

/** "Tue 07:42 3.1 °Brix = 7.1 %, by R." */
export function sayLast({ lastStrength }: SumpNow, shop: ShopOfBook): string {
  if (lastStrength === null) return say('no reading yet')
  const { at, by, text, concentration } = lastStrength
  const when = sayWhenShort(at, { timeZone: shop.timeZone, now: new Date().toISOString() })
  const read = concentration === null ? text : `${text} = ${sayPercent(concentration, readerOf(shop.units))}`
  return by === null ? `${when} ${read}` : say('{when} {read}, by {who}', { when, read, who: by })
}
