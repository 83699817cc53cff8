import { message, say } from '@sumpbook/fluid'
import type { Outlook, SumpPage, Units } from '../api/types.ts'
import { ConcentrationCourse } from './course.tsx'
import { Losses } from './losses.tsx'

/** Lengths of the past that can be drawn, in days. */
const periods = [
  [message('13 weeks'), 91],
  [message('a year'), 366],
  [message('all'), 3660],
] as const
const day = 86_400_000

/** From where the drawings of a sump run: not before its first entry. */
export function drawnFrom({ history }: SumpPage, { at }: Outlook, days: number): number {
  return Math.max(Date.parse(at) - days * day, Date.parse(history[0]?.at ?? at) - day)
}

interface ConcentrationPartProps {
  sump: SumpPage
  outlook: Outlook | null
  timeZone: string
  units: Units
  days: number
  setDays(days: number): void
}

/** Its concentration, past and ahead, and what leaves it. */
export function ConcentrationPart({ sump, outlook, timeZone, units, days, setDays }: ConcentrationPartProps) {
  const isEmpty = sump.history.length === 0
  if (outlook === null || isEmpty) {
    return (
      <section aria-labelledby="concentration" class="part">
        <h2 id="concentration">{say('Concentration')}</h2>
        <p class="quiet">{isEmpty ? say('Nothing has been written down yet.') : say('Working out its history …')}</p>
      </section>
    )
  }
  return (
    <>
      <section aria-labelledby="concentration" class="part">
        <h2 id="concentration">{say('Concentration')}</h2>
        <fieldset class="periods no-print">
          <legend class="only-read">{say('Period')}</legend>
          {periods.map(([words, length]) => (
            <button
              key={length}
              type="button"
              class="plain"
              aria-pressed={days === length}
              onClick={() => setDays(length)}
            >
              {say(words)}
            </button>
          ))}
        </fieldset>
        <ConcentrationCourse sump={sump} outlook={outlook} from={drawnFrom(sump, outlook, days)} timeZone={timeZone} />
      </section>
      <section aria-labelledby="losses" class="part">
        <h2 id="losses">{say('What leaves it, and what would hold it')}</h2>
        <Losses sump={sump} outlook={outlook} units={units} />
      </section>
    </>
  )
}
