import { type BuildUpMineral, buildUpMinerals, say, sayList } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useSump, useSumps } from '../api/queries.ts'
import type { Book, HistoryEntry, SumpNow, Thing } from '../api/types.ts'
import { SelectField, Taps } from '../fields/fields.tsx'
import { type FigureField, Figures } from '../fields/figures.tsx'
import { fieldFigure, fieldPercent, fieldVolume, shopUnits } from '../say/units.ts'
import { inTrueLitres } from '../standing/true-litres.ts'
import { figureOfWater } from './analyses.ts'
import { type AheadKey, type AheadRead, type AheadTexts, aheadOf, mineralWords, readAhead } from './build.ts'
import { limitOf } from './limit-of.ts'
import { Rates } from './rates.tsx'
import { headlineOf, sayCycles, sayFuture } from './say-ahead.ts'
import { Staircase, sayStaircase } from './staircase.tsx'

/** What a text belongs to: figures of a mineral are kept apart, mineral by mineral. */
const ofMineral: readonly AheadKey[] = ['now', 'limit', 'present', 'other']
const slot = (key: AheadKey, mineral: BuildUpMineral): string => (ofMineral.includes(key) ? `${mineral}.${key}` : key)

/** The minerals of a sump in the weeks ahead: on the water of now, and on another from a day on. */
export function AheadTool({ book }: { book: Book }) {
  const sumps = useSumps().data ?? []
  const [id, setId] = useState('')
  const page = useSump(id)
  const sump = sumps.find((each) => each.sump === id)
  return (
    <AheadOf
      key={id}
      book={book}
      sumps={sumps}
      sump={sump}
      history={id === '' ? [] : (page.data?.history ?? [])}
      pick={setId}
    />
  )
}

interface AheadOfProps {
  book: Book
  sumps: readonly SumpNow[]
  sump: SumpNow | undefined
  history: readonly HistoryEntry[]
  pick(id: string): void
}

function AheadOf({ book, sumps, sump, history, pick }: AheadOfProps) {
  const { units } = book.shop
  const [mineral, setMineral] = useState<BuildUpMineral>('hardness')
  const [presentId, setPresentId] = useState(() => firstWater(book, ['tap', 'well']))
  const [otherId, setOtherId] = useState(() => firstWater(book, ['deionised', 'reverse-osmosis']))
  const [weeks, setWeeks] = useState(26)
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({})
  const water = (wanted: string) => book.waters.find((each) => each.id === wanted)
  const [present, other] = [water(presentId), water(otherId)]
  const known = knownTexts({ book, sump, history, mineral, present, other })
  const texts = Object.fromEntries(
    Object.entries(known).map(([key, text]) => [key, typed[slot(key as AheadKey, mineral)] ?? text]),
  ) as AheadTexts
  const read = readAhead(texts, mineral, units)
  const change = (key: AheadKey, text: string) => setTyped({ ...typed, [slot(key, mineral)]: text })
  const pickWater = (key: 'present' | 'other', next: string) => {
    if (key === 'present') setPresentId(next)
    else setOtherId(next)
    // A water just picked brings its own figures; what was typed for the one before does not belong to it.
    setTyped(Object.fromEntries(Object.entries(typed).filter(([place]) => !place.endsWith(`.${key}`))))
  }
  const figures = (fields: readonly FigureField<AheadKey>[]) => (
    <Figures fields={fields} texts={texts} faults={read.faults} change={change} />
  )
  const { volumeName } = shopUnits[units]
  const typedIn = { mineral: say(mineralWords[mineral].name), unit: say(mineralWords[mineral].unitName) }
  const waters = book.waters.map(({ id, name }) => [id, name] as const)
  return (
    <>
      <p class="intro">
        {say(
          'Evaporation takes water alone; what is dissolved in it stays and grows with every top-up. Two futures: the water of now, and another from a day on.',
        )}
      </p>
      <div class="tool">
        <div class="tool-fields">
          <SelectField
            label={say('Sump')}
            value={sump?.sump ?? ''}
            onInput={pick}
            choices={[['', say('none: type the figures')], ...sumps.map(({ sump, name }) => [sump, name] as const)]}
          />
          <Taps
            legend={say('Mineral')}
            name="ahead-mineral"
            value={mineral}
            choices={buildUpMinerals.map((each) => [each, say(mineralWords[each].word)])}
            onPick={(value) => setMineral(value as BuildUpMineral)}
          />
          {figures([
            { key: 'evaporation', label: say('Evaporates a day, {unit}', { unit: say(volumeName) }) },
            {
              key: 'carryOff',
              label: say('Carried off a day, {unit}', { unit: say(volumeName) }),
              hint: say('With chips, parts, mist and leaks'),
            },
            { key: 'fillVolume', label: say('Full mark, {unit}', { unit: say(volumeName) }) },
            {
              key: 'volume',
              label: say('In it now, {unit}', { unit: say(volumeName) }),
              hint: say('Empty: at the mark'),
            },
            { key: 'now', label: say('{mineral} in it now, {unit}', typedIn) },
            { key: 'limit', label: say('The most wanted, {unit}', typedIn), hint: say('Empty: no limit') },
            { key: 'target', label: say('Target, %') },
            {
              key: 'strength',
              label: say('Top-ups poured at, %'),
              hint: say('Empty: what holds the target'),
            },
          ])}
          <p class="quiet">
            {say(
              'Evaporation and carry-off are typed here. Later the book learns them from what is logged anyway; until then count what is poured in a week.',
            )}
          </p>
          <div class="figures">
            <SelectField
              label={say('Water poured now')}
              value={presentId}
              onInput={(next) => pickWater('present', next)}
              choices={[['', say('none of the book')], ...waters]}
            />
            <SelectField
              label={say('Another water')}
              value={otherId}
              onInput={(next) => pickWater('other', next)}
              choices={[['', say('none of the book')], ...waters]}
            />
          </div>
          {figures([
            { key: 'present', label: say('{mineral} of the water now, {unit}', typedIn) },
            { key: 'other', label: say('{mineral} of the other, {unit}', typedIn) },
            { key: 'inDays', label: say('The other water in, days'), hint: say('0: from today') },
          ])}
          {other?.kind === 'softened' && (
            <p class="fault">
              {say(
                'Softened water is never a routine top-up: its hardness reads low, its sodium and chloride build up.',
              )}
            </p>
          )}
          <Taps
            legend={say('Weeks ahead')}
            name="ahead-weeks"
            value={String(weeks)}
            choices={[13, 26, 52].map((n) => [String(n), String(n)])}
            onPick={(value) => setWeeks(Number(value))}
          />
        </div>
        <AheadWords
          read={read}
          mineral={mineral}
          weeks={weeks}
          book={book}
          names={{ present: present?.name ?? say('the water of now'), other: other?.name ?? say('the other water') }}
          sump={sump?.name ?? say('A sump')}
        />
        <details class="more">
          <summary>{say('Evaporation or carry-off not known')}</summary>
          <Rates
            units={units}
            area={surfaceOf(book, sump)}
            evaporation={read.values.evaporation}
            take={(key, litres) => change(key, fieldVolume(litres, units))}
          />
        </details>
      </div>
    </>
  )
}

interface AheadWordsProps {
  read: AheadRead
  mineral: BuildUpMineral
  weeks: number
  book: Book
  names: { present: string; other: string }
  sump: string
}

function AheadWords({ read, mineral, weeks, book, names, sump }: AheadWordsProps) {
  const answer = aheadOf(read, { mineral, weeks, names })
  const { limit } = read.values
  if (answer === null) {
    return (
      <section class="answer" aria-label={say('Minerals ahead')}>
        <p role="status">
          {Object.keys(read.faults).length > 0
            ? say('A figure does not fit; its field says why.')
            : say('It takes {list}.', { list: sayList(read.missing) })}
        </p>
      </section>
    )
  }
  const { futures } = answer
  return (
    <section class="answer" aria-label={say('Minerals ahead')}>
      <div role="status">
        <p class="headline">{headlineOf(futures[0]!, limit, mineral, book)}</p>
        {futures.map((future) => (
          <p key={future.name}>{sayFuture(future, limit, mineral, book)}</p>
        ))}
        <p>{sayCycles(answer)}</p>
      </div>
      <Staircase
        futures={futures}
        limit={limit}
        mineral={mineral}
        weeks={weeks}
        says={sayStaircase(futures, { mineral, weeks, limit, sump })}
      />
      <p class="quiet">
        {say(
          'At the full mark, a step a week. Full line: the water of now; broken: the other; ○ where the limit is met.',
        )}{' '}
        {mineral === 'hardness' &&
          say(
            'Hardness is not quite conserved: scum takes some out, magnesium chips bring some in. Chloride tells it better.',
          )}
        {mineral === 'conductivity' &&
          say('Of the minerals alone: the concentrate conducts too, and salts add up only roughly.')}
      </p>
    </section>
  )
}

/** The texts that stand in the fields before anybody types. */
function knownTexts({
  book,
  sump,
  history,
  mineral,
  present,
  other,
}: {
  book: Book
  sump: SumpNow | undefined
  history: readonly HistoryEntry[]
  mineral: BuildUpMineral
  present: Thing | undefined
  other: Thing | undefined
}): AheadTexts {
  const { units } = book.shop
  const litres = (value: number | null | undefined) => (value == null ? '' : fieldVolume(value, units))
  const percent = (value: number | null | undefined) => (value == null ? '' : fieldPercent(value))
  const figure = (value: number | null) => (value === null ? '' : fieldFigure(value))
  const held = sump === undefined ? undefined : inTrueLitres(sump)
  const mark = held?.bench.fillVolume ?? null
  const volume = held?.volume?.mean ?? null
  const measured = history.findLast((entry) => !entry.withdrawn && entry.hardness !== null)?.hardness ?? null
  return {
    fillVolume: litres(mark),
    volume: litres(volume === null || mark === null ? volume : Math.min(volume, mark)),
    evaporation: '',
    carryOff: '',
    concentration: percent(sump?.concentration?.mean),
    target: percent(sump?.bench.target),
    strength: '',
    now: mineral === 'hardness' ? figure(measured) : '',
    limit: figure(limitOf(book, sump, mineral)),
    present: figure(figureOfWater(present, mineral)),
    other: figure(figureOfWater(other, mineral)),
    inDays: '0',
  }
}

function surfaceOf(book: Book, sump: SumpNow | undefined): number | null {
  const area = book.sumpList?.find(({ id }) => id === sump?.sump)?.surfaceArea
  return typeof area === 'number' ? area : null
}

const firstWater = (book: Book, kinds: readonly string[]): string =>
  book.waters.find(({ kind }) => kinds.includes(String(kind)))?.id ?? ''
