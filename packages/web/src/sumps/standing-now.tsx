import type { SumpPage, Units } from '../api/types.ts'
import { BandLine } from '../band-line/band-line.tsx'
import { isPour } from '../entry/entries.ts'
import { Gauge } from '../gauge/gauge.tsx'
import { inTrueLitres } from '../standing/true-litres.ts'

/** Where it stands and where it goes with nothing done, in sentences and on its scales. */
export function StandingNow({ sump, units }: { sump: SumpPage; units: Units }) {
  const { bench, ahead, recipe } = sump
  const held = inTrueLitres(sump)
  return (
    <>
      <p class="lede">{sump.sentence}</p>
      <p class="ahead">
        {ahead.drift} {ahead.crossing} {ahead.check}
      </p>
      {bench.class !== 'straight-oil' && (
        <div class="standing">
          <BandLine
            band={bench.band}
            target={bench.target}
            now={sump.concentration}
            after={isPour(recipe) ? (recipe.result?.concentration ?? null) : null}
            inAWeek={sump.inAWeek?.concentration.mean ?? null}
          />
          <Gauge volume={held.volume} bench={held.bench} units={units} />
        </div>
      )}
    </>
  )
}
