import { message, say, sayNumber } from '@sumpbook/fluid'
import type { FannedDay, HistoryEntry, Outlook, SumpPage } from '../api/types.ts'
import { FanChart } from './fan-chart.tsx'
import { type FanDay, hardnessSaid, marksOf, type Said, timesOf } from './fan-layout.ts'

interface CourseProps {
  sump: SumpPage
  outlook: Outlook
  /** Milliseconds since 1970: where the drawing begins. */
  from: number
  timeZone: string
}

/** What is a record of the sump, for gaps. */
const recordKinds = ['reading', 'charge', 'addition', 'drawoff', 'transfer']

/** The concentration: history, now, and four weeks ahead with nothing done. */
export function ConcentrationCourse({ sump, outlook, from, timeZone }: CourseProps) {
  const { bench, name, history } = sump
  const parts = partsOf(sump, outlook, 'concentration')
  const band =
    bench.band === null ? null : { low: bench.band.low, high: bench.band.high < 100 ? bench.band.high : null }
  return (
    <>
      <FanChart
        {...parts}
        marks={marksIn(sump, outlook, from, ({ concentration }) =>
          concentration === null ? null : { value: concentration.mean, span: null },
        )}
        records={timesOf(history, recordKinds, 0)}
        charges={timesOf(history, ['charge'], 0)}
        pours={timesOf(history, ['addition'], from)}
        band={band}
        target={bench.target}
        unit="%"
        decimals={1}
        from={from}
        timeZone={timeZone}
        says={sayCourse(name, message('{sump}, concentration: {value} ({low} to {high}) now.'), parts, {
          unit: '%',
          decimals: 1,
        })}
      />
      <p class="quiet key">
        {say(
          '○ readings by the factor alone · shade: where it stood, 9 times in 10, and darker every second time · ↓ pours · × set aside. Right of the upright: the days ahead with nothing done, four weeks at most, or until it would be down at its pumps. Blank where three weeks passed without a record.',
        )}
      </p>
    </>
  )
}

/** The hardness the same way, with its limit. */
export function HardnessCourse({ sump, outlook, from, timeZone }: CourseProps) {
  const { name, history } = sump
  const parts = partsOf(sump, outlook, 'hardness')
  return (
    <FanChart
      {...parts}
      marks={marksIn(sump, outlook, from, hardnessSaid)}
      records={timesOf(history, recordKinds, 0)}
      charges={timesOf(history, ['charge'], 0)}
      pours={null}
      band={outlook.limits.hardness}
      target={null}
      unit="ppm"
      decimals={0}
      from={from}
      timeZone={timeZone}
      says={sayCourse(name, message('{sump}, hardness: {value} ({low} to {high}) now.'), parts, {
        unit: 'ppm',
        decimals: 0,
      })}
      height={230}
      zero
    />
  )
}

/** A sump that holds less than this share of its mark is as good as empty where nobody said where its pumps draw (common practice). */
const nearlyEmpty = 0.25

/** The days ahead until it would be down at its pumps: what is said of less fluid than that means nothing. */
export function daysUntilDry({ ahead, now }: Outlook, bench: Pick<SumpPage['bench'], 'minVolume' | 'fillVolume'>) {
  const mark = now.markVolume.mean
  const share = bench.minVolume !== null && bench.fillVolume !== null ? bench.minVolume / bench.fillVolume : nearlyEmpty
  const dry = ahead.findIndex(({ volume }) => volume.mean < share * mark)
  return dry === -1 ? ahead : ahead.slice(0, dry)
}

interface CourseParts {
  past: FanDay[]
  now: FanDay
  ahead: FanDay[]
}

function partsOf({ bench }: SumpPage, outlook: Outlook, what: 'concentration' | 'hardness'): CourseParts {
  const dayOf = (day: FannedDay): FanDay => ({ at: Date.parse(day.at), ...day[what] })
  const { mean, sd, low90, high90 } = outlook.now[what]
  const inner = 0.674 * sd
  const [low50, high50] = [Math.max(low90, mean - inner), Math.min(high90, mean + inner)]
  return {
    past: outlook.history.map(dayOf),
    now: { at: Date.parse(outlook.at), mean, low90, high90, low50, high50 },
    ahead: daysUntilDry(outlook, bench).map(dayOf),
  }
}

function marksIn({ history }: SumpPage, { doubts }: Outlook, from: number, said: (entry: HistoryEntry) => Said | null) {
  const doubted = new Set(doubts.filter(({ open }) => open).flatMap(({ entries }) => entries))
  return marksOf(history, { said, doubted, from })
}

function sayCourse(
  name: string,
  words: string,
  { past, now, ahead }: CourseParts,
  { unit, decimals }: { unit: string; decimals: number },
): string {
  const figure = (value: number) => sayNumber(value, decimals)
  const of = ({ mean, low90, high90 }: FanDay) => ({
    value: `${figure(mean)} ${unit}`,
    low: figure(low90),
    high: figure(high90),
  })
  const means = past.map(({ mean }) => mean)
  const was =
    means.length === 0
      ? ''
      : say('It was between {low} and {high} before.', {
          low: figure(Math.min(...means)),
          high: `${figure(Math.max(...means))} ${unit}`,
        })
  const last = ahead.at(-1)
  const days = last === undefined ? 0 : Math.round((last.at - now.at) / 86_400_000)
  const then =
    last === undefined
      ? ''
      : say('In {days, plural, one {# day} other {# days}}, with nothing done, {value} ({low} to {high}).', {
          days,
          ...of(last),
        })
  return [say(words, { sump: name, ...of(now) }), was, then].filter((sentence) => sentence !== '').join(' ')
}
