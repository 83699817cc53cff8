import { type Reader, say, sayCautions, sayNumber, sayParts, sayPercent, sayStrength, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useToday } from '../api/queries.ts'
import type { Book, Units } from '../api/types.ts'
import { Taps } from '../fields/fields.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { readerOf } from '../say/units.ts'
import {
  besideTheList,
  type CartNeed,
  type CartPlan,
  cartNeeds,
  fluidsOf,
  planCart,
  type Served,
  worstByStrengths,
} from './cart-plan.ts'

/** One cart for many sumps: a few strengths that serve all of them, and what each sump misses by it. */
export function Cart({ book }: { book: Book }) {
  const today = useToday()
  const { units } = book.shop
  const [strengths, setStrengths] = useState(2)
  const [fluid, setFluid] = useState<string | null>(null)
  const [turned, setTurned] = useState<ReadonlySet<string>>(new Set())
  if (today.data === undefined) {
    return today.error === null ? (
      <p class="quiet">{say('Working out the day …')}</p>
    ) : (
      <p class="fault">{today.error.message}</p>
    )
  }
  const all = cartNeeds(today.data)
  const fluids = fluidsOf(all)
  const chosen = fluids.find(({ id }) => id === fluid) ?? fluids[0]
  if (chosen === undefined) return <p>{say('No sump has anything to pour into it today.')}</p>
  const needs = all.filter((need) => need.fluid.id === chosen.id)
  // What today's list asks for is on the cart, the others where somebody takes them along.
  const isTaken = ({ sump, isListed }: CartNeed) => isListed !== turned.has(sump)
  const taken = needs.filter(isTaken)
  const turn = (sump: string) => {
    const next = new Set(turned)
    if (!next.delete(sump)) next.add(sump)
    setTurned(next)
  }
  const worst = worstByStrengths(taken)
  const plan = planCart(taken, strengths)
  const [first] = [...today.data.items, ...besideTheList(today.data)]
  const bench = first?.bench
  return (
    <>
      <p class="intro">
        {say(
          'Each sump asks for a strength of its own; a cart carries a few. These are the ones that miss the least, all sumps together.',
        )}
      </p>
      <div class="tool">
        <div class="tool-fields">
          {fluids.length > 1 && (
            <Taps
              legend={say('Fluid')}
              name="cart-fluid"
              value={chosen.id}
              choices={fluids.map(({ id, name }) => [id, name])}
              onPick={setFluid}
            />
          )}
          <Taps
            legend={say('Strengths on the cart')}
            name="cart-strengths"
            value={String(strengths)}
            choices={worst.map((_, i) => [String(i + 1), String(i + 1)])}
            onPick={(value) => setStrengths(Number(value))}
          />
          {taken.length > 0 && <p class="quiet">{sayWorst(worst)}</p>}
        </div>
        <section class="answer" aria-label={say('The cart')}>
          {plan === null ? (
            <p>{say('No sump is taken along.')}</p>
          ) : (
            <Batches plan={plan} units={units} fluid={chosen.name} bucket={bench?.container?.capacity ?? null} />
          )}
        </section>
        <fieldset class="tool-fields stops">
          <legend>{say('Sumps taken along')}</legend>
          <ul>
            {needs.map((need) => (
              <li key={need.sump}>
                <label class="check">
                  <input type="checkbox" checked={isTaken(need)} onChange={() => turn(need.sump)} />
                  <span>
                    <strong>{need.name}</strong>
                    <span class="quiet">
                      {' '}
                      {say(need.isListed ? '{volume} at {strength}' : '{volume} at {strength}, only filled up', {
                        volume: sayVolume(need.volume, readerOf(units)),
                        strength: sayStrength(need.strength, readerOf(units)),
                      })}
                    </span>
                  </span>
                </label>
                {plan !== null && <Landing served={plan.served.find(({ need: { sump } }) => sump === need.sump)} />}
              </li>
            ))}
          </ul>
        </fieldset>
      </div>
    </>
  )
}

/** How much one more strength is worth: up to the first that leaves nothing to win. */
function sayWorst(worst: readonly number[]): string {
  const enough = worst.findIndex((error) => error < 0.005)
  const told = enough === -1 ? worst : worst.slice(0, enough)
  if (told.length === 0) return say('One strength serves them all.')
  const misses = told.map((error, i) => `${i + 1}: ${sayNumber(error, 2)} %`).join(' · ')
  return enough === -1
    ? say('The worst miss with so many strengths: {misses}.', { misses })
    : say('The worst miss with so many strengths: {misses} · from {count} on none.', { misses, count: enough + 1 })
}

function Batches({
  plan,
  units,
  fluid,
  bucket,
}: {
  plan: CartPlan
  units: Units
  fluid: string
  bucket: number | null
}) {
  const reader = readerOf(units)
  const names = new Map(plan.served.map(({ need }) => [need.sump, need.name]))
  const hasConcentrate = plan.batches.some(({ strength }) => strength > 0)
  const outside = plan.served.filter(({ isInBand }) => !isInBand)
  return (
    <>
      <ol class="batches">
        {plan.batches.map(({ strength, volume, sumps }) => {
          const concentrate = (volume * strength) / 100
          const { part, rest } = sayParts(volume, concentrate, reader)
          return (
            <li key={strength}>
              <p class="headline">
                {say('{volume} at {strength}', {
                  volume: sayVolume(volume, reader),
                  strength: sayStrength(strength, reader),
                })}
              </p>
              <p>
                {sayBatch({ water: rest, concentrate: concentrate === 0 ? null : part, fluid }, volume, bucket, reader)}
              </p>
              <p class="quiet">{sumps.map((sump) => names.get(sump)).join(' · ')}</p>
            </li>
          )
        })}
      </ol>
      <p>{sayMiss(plan.worst, outside)}</p>
      {hasConcentrate && <Cautions cautions={sayCautions(['concentrateLast'])} />}
    </>
  )
}

/** What goes into a batch, and how many buckets it fills. */
function sayBatch(
  { water, concentrate, fluid }: { water: string; concentrate: string | null; fluid: string },
  volume: number,
  bucket: number | null,
  reader: Reader,
): string {
  if (bucket === null) {
    return concentrate === null
      ? say('{water} of water.', { water })
      : say('{water} of water, then {concentrate} of {fluid} concentrate into it.', { water, concentrate, fluid })
  }
  const buckets = { count: Math.ceil(volume / bucket - 1e-9), bucket: sayVolume(bucket, reader) }
  return concentrate === null
    ? say('{water} of water; {count, plural, one {# bucket} other {# buckets}} of {bucket}.', { water, ...buckets })
    : say(
        '{water} of water, then {concentrate} of {fluid} concentrate into it; {count, plural, one {# bucket} other {# buckets}} of {bucket}.',
        { water, concentrate, fluid, ...buckets },
      )
}

/** The worst miss, and which sumps it takes out of their bands. */
function sayMiss(worst: number, outside: readonly Served[]): string {
  const percent = sayNumber(worst, 2)
  const sumps = outside.map(({ need }) => need.name).join(', ')
  if (worst < 0.005) {
    return outside.length === 0
      ? say('Every sump gets what it asks for; every sump lands in its band.')
      : say('Every sump gets what it asks for; outside its band: {sumps}.', { sumps })
  }
  return outside.length === 0
    ? say('The worst miss is {percent} %; every sump lands in its band.', { percent })
    : say('The worst miss is {percent} %; outside its band: {sumps}.', { percent, sumps })
}

function Landing({ served }: { served: Served | undefined }) {
  if (served === undefined) return null
  const { strength, error, lands, isInBand } = served
  const blanks = {
    strength: sayStrength(strength, { units: 'metric' }),
    lands: sayPercent(lands, { units: 'metric' }),
    side: Math.abs(error) < 0.005 ? 'none' : error > 0 ? 'above' : 'under',
    miss: sayNumber(Math.abs(error), 2),
  }
  return (
    <p class={isInBand ? 'landing' : 'landing outside'}>
      {say(
        isInBand
          ? 'gets {strength}, lands at {lands}, {side, select, above {{miss} above its own recipe} under {{miss} under its own recipe} other {as it asks}}'
          : 'gets {strength}, lands at {lands}, {side, select, above {{miss} above its own recipe} under {{miss} under its own recipe} other {as it asks}}: outside its band',
        blanks,
      )}
    </p>
  )
}
