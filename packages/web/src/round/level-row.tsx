import { say, sayVolume } from '@sumpbook/fluid'
import type { ShopOfBook, SumpNow } from '../api/types.ts'
import { Taps } from '../fields/fields.tsx'
import { readerOf, shopUnits } from '../say/units.ts'
import { type LevelBy, quarters, type Typed } from './typed.ts'

interface LevelRowProps {
  typed: Typed
  sump: SumpNow
  shop: ShopOfBook
  field: { current: HTMLInputElement | null }
  isActive: boolean
  type(change: Partial<Typed>): void
  onFocus(): void
  onEnter(): void
}

export function LevelRow({ typed, sump, shop, field, isActive, type, onFocus, onEnter }: LevelRowProps) {
  const { bench } = sump
  const units = shopUnits[shop.units]
  const reader = readerOf(shop.units)
  const isMark = typed.levelBy === 'mark'
  const isQuarter = typed.levelBy === 'quarter'
  /** What stands in the field where nobody typed a figure. */
  const byEye = isMark ? say('at the mark') : say('about {quarter}', { quarter: typed.level })
  const unit = typed.levelBy === 'dip' ? units.length : units.volumeWord
  const ways: (readonly [LevelBy, string])[] = [
    ['volume', units.volumeWord],
    ...(bench.fillVolume === null
      ? []
      : ([
          ['mark', say('at the mark')],
          ['quarter', say('quarters')],
        ] as const)),
    ...(bench.dipTable === null ? [] : ([['dip', say('dip, {unit}', { unit: units.length })]] as const)),
  ]
  return (
    <>
      <div
        class={`row read level${isActive ? ' here' : ''}${isMark || typed.level !== '' ? ' has' : ''}${isMark || isQuarter ? ' by-eye' : ''}`}
      >
        <label for="level">{say('Level')}</label>
        <input
          id="level"
          ref={field}
          value={isMark || (isQuarter && typed.level !== '') ? byEye : typed.level}
          inputMode="none"
          autocomplete="off"
          aria-label={
            typed.levelBy === 'dip'
              ? say('Level, dip in {unit}', { unit })
              : say('Level, {unit}', { unit: say(units.volumeName) })
          }
          onFocus={onFocus}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return
            event.preventDefault()
            onEnter()
          }}
          onInput={(event) => {
            const text = event.currentTarget.value
            const fresh = { levelBy: 'volume', level: text.replace(byEye, '') } as const
            type(isMark || isQuarter ? fresh : { level: text })
          }}
        />
        <span>
          {isMark
            ? sayVolume(bench.fillVolume!, reader)
            : bench.fillVolume === null || typed.levelBy === 'dip'
              ? unit
              : say('of {volume}', { volume: sayVolume(bench.fillVolume, reader) })}
        </span>
      </div>
      {isActive ? (
        <div class="level-ways">
          {ways.length > 1 && (
            <Taps
              legend={say('Read as')}
              name="level-by"
              value={typed.levelBy}
              choices={ways}
              onPick={(levelBy) => levelBy !== typed.levelBy && type({ levelBy: levelBy as LevelBy, level: '' })}
            />
          )}
          {isQuarter && (
            <Taps
              legend={say('By eye')}
              name="quarter"
              value={typed.level}
              choices={quarters.map((quarter) => [quarter, quarter])}
              onPick={(level) => type({ level })}
            />
          )}
          <Taps
            legend={say('Pumps')}
            name="pumps"
            value={typed.pumps}
            choices={[
              ['stopped', say('stopped')],
              ['running', say('running')],
            ]}
            onPick={(pumps) => type({ pumps: pumps as Typed['pumps'] })}
          />
        </div>
      ) : (
        (typed.level !== '' || isMark) && (
          <p class={`sub level-sub ${typed.pumps}`}>
            {typed.pumps === 'running' ? say('pumps running') : say('pumps stopped')}
          </p>
        )
      )}
    </>
  )
}
