import { say, sayNumber, sayPercent, sayStrength, sayVolume } from '@sumpbook/fluid'
import type { Outlook, SumpPage, Units } from '../api/types.ts'
import { Said } from '../say/said.tsx'
import { readerOf } from '../say/units.ts'

/** What leaves the sump a day, what top-up would hold it, and what its full mark is reckoned to be. */
export function Losses({ sump, outlook, units }: { sump: SumpPage; outlook: Outlook; units: Units }) {
  const reader = readerOf(units)
  const { evaporation, carryOff, markVolume } = outlook.now
  const { bench } = sump
  const litres = (figure: { mean: number; low90: number; high90: number }) => {
    const [low, high] = [sayVolume(figure.low90, reader), sayVolume(figure.high90, reader)]
    return { volume: sayVolume(figure.mean, reader), range: `${low.slice(0, low.lastIndexOf(' '))}–${high}` }
  }
  return (
    <dl class="pairs">
      <dt>{say('Evaporates')}</dt>
      <dd>{say('{volume} a day ({range}): water alone; what is in it stays', litres(evaporation))}</dd>
      <dt>{say('Carried off')}</dt>
      <dd>{say('{volume} a day ({range}): with chips, parts and leaks', litres(carryOff))}</dd>
      {outlook.topUpToHold !== null && (
        <>
          <dt>{say('To hold it')}</dt>
          <dd>
            <Said
              text="topped up at about <strong>{strength}</strong> it would stay at {target}"
              values={{
                strength: sayStrength(outlook.topUpToHold, reader),
                target: sayPercent(bench.target!, reader),
              }}
              parts={{ strong: (inside) => <strong class="amount">{inside}</strong> }}
            />
          </dd>
        </>
      )}
      {carryOff.mean > 0 && (
        <>
          <dt>{say('Minerals')}</dt>
          <dd>
            {say('grow to about {times} times those of its top-ups', {
              times: sayNumber((evaporation.mean + carryOff.mean) / carryOff.mean, 1),
            })}
          </dd>
        </>
      )}
      <dt>{say('Full mark')}</dt>
      <dd>{markWords(bench.fillVolume, markVolume, units)}</dd>
    </dl>
  )
}

function markWords(plate: number | null, { low90, high90 }: { low90: number; high90: number }, units: Units): string {
  const reader = readerOf(units)
  const low = sayVolume(low90, reader)
  const reckoned = { low: low.slice(0, low.lastIndexOf(' ')), high: sayVolume(high90, reader) }
  return plate === null
    ? say('{low} to {high}, as the pours tell', reckoned)
    : say('{plate} by its plate; {low} to {high}, as the pours tell', {
        plate: sayVolume(plate, reader),
        ...reckoned,
      })
}
