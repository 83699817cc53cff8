import { sayNumber, sayPercent, sayStrength, sayVolume } from '@sumpbook/fluid'
import type { Outlook, SumpPage, Units } from '../api/types.ts'
import { readerOf } from '../say/units.ts'

/** What leaves the sump a day, what top-up would hold it, and what its full mark is reckoned to be. */
export function Losses({ sump, outlook, units }: { sump: SumpPage; outlook: Outlook; units: Units }) {
  const reader = readerOf(units)
  const { evaporation, carryOff, markVolume } = outlook.now
  const { bench } = sump
  const litres = (figure: { mean: number; low90: number; high90: number }) => {
    const [low, high] = [sayVolume(figure.low90, reader), sayVolume(figure.high90, reader)]
    return `${sayVolume(figure.mean, reader)} a day (${low.slice(0, low.lastIndexOf(' '))}–${high})`
  }
  return (
    <dl class="pairs">
      <dt>Evaporates</dt>
      <dd>{litres(evaporation)}: water alone; what is in it stays</dd>
      <dt>Carried off</dt>
      <dd>{litres(carryOff)}: with chips, parts and leaks</dd>
      {outlook.topUpToHold !== null && (
        <>
          <dt>To hold it</dt>
          <dd>
            topped up at about <strong class="amount">{sayStrength(outlook.topUpToHold, reader)}</strong> it would stay
            at {sayPercent(bench.target!, reader)}
          </dd>
        </>
      )}
      {carryOff.mean > 0 && (
        <>
          <dt>Minerals</dt>
          <dd>
            grow to about {sayNumber((evaporation.mean + carryOff.mean) / carryOff.mean, 1)} times those of its top-ups
          </dd>
        </>
      )}
      <dt>Full mark</dt>
      <dd>{markWords(bench.fillVolume, markVolume, units)}</dd>
    </dl>
  )
}

function markWords(plate: number | null, { low90, high90 }: { low90: number; high90: number }, units: Units): string {
  const reader = readerOf(units)
  const low = sayVolume(low90, reader)
  const reckoned = `${low.slice(0, low.lastIndexOf(' '))} to ${sayVolume(high90, reader)}, as the pours tell`
  return plate === null ? reckoned : `${sayVolume(plate, reader)} by its plate; ${reckoned}`
}
