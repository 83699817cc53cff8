import { sayCautions, sayNumber, sayParts, sayPercent, sayStrength, sayVolume } from '@sumpbook/fluid'
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
      <p class="quiet">Working out the day …</p>
    ) : (
      <p class="fault">{today.error.message}</p>
    )
  }
  const all = cartNeeds(today.data)
  const fluids = fluidsOf(all)
  const chosen = fluids.find(({ id }) => id === fluid) ?? fluids[0]
  if (chosen === undefined) return <p>No sump has anything to pour into it today.</p>
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
        Each sump asks for a strength of its own; a cart carries a few. These are the ones that miss the least, all
        sumps together.
      </p>
      <div class="tool">
        <div class="tool-fields">
          {fluids.length > 1 && (
            <Taps
              legend="Fluid"
              name="cart-fluid"
              value={chosen.id}
              choices={fluids.map(({ id, name }) => [id, name])}
              onPick={setFluid}
            />
          )}
          <Taps
            legend="Strengths on the cart"
            name="cart-strengths"
            value={String(strengths)}
            choices={worst.map((_, i) => [String(i + 1), String(i + 1)])}
            onPick={(value) => setStrengths(Number(value))}
          />
          {taken.length > 0 && <p class="quiet">{sayWorst(worst)}</p>}
        </div>
        <section class="answer" aria-label="The cart">
          {plan === null ? (
            <p>No sump is taken along.</p>
          ) : (
            <Batches plan={plan} units={units} fluid={chosen.name} bucket={bench?.container?.capacity ?? null} />
          )}
        </section>
        <fieldset class="tool-fields stops">
          <legend>Sumps taken along</legend>
          <ul>
            {needs.map((need) => (
              <li key={need.sump}>
                <label class="check">
                  <input type="checkbox" checked={isTaken(need)} onChange={() => turn(need.sump)} />
                  <span>
                    <strong>{need.name}</strong>
                    <span class="quiet">
                      {' '}
                      {sayVolume(need.volume, readerOf(units))} at {sayStrength(need.strength, readerOf(units))}
                      {need.isListed ? '' : ', only filled up'}
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
  if (told.length === 0) return 'One strength serves them all.'
  const misses = told.map((error, i) => `${i + 1}: ${sayNumber(error, 2)} %`).join(' · ')
  return `The worst miss with so many strengths: ${misses}${enough === -1 ? '' : ` · from ${enough + 1} on none`}.`
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
                {sayVolume(volume, reader)} at {sayStrength(strength, reader)}
              </p>
              <p>
                {concentrate === 0
                  ? `${rest} of water`
                  : `${rest} of water, then ${part} of ${fluid} concentrate into it`}
                {bucket !== null && `; ${Math.ceil(volume / bucket - 1e-9)} buckets of ${sayVolume(bucket, reader)}`}.
              </p>
              <p class="quiet">{sumps.map((sump) => names.get(sump)).join(' · ')}</p>
            </li>
          )
        })}
      </ol>
      <p>
        {plan.worst < 0.005 ? 'Every sump gets what it asks for' : `The worst miss is ${sayNumber(plan.worst, 2)} %`}
        {outside.length === 0
          ? '; every sump lands in its band.'
          : `; outside its band: ${outside.map(({ need }) => need.name).join(', ')}.`}
      </p>
      {hasConcentrate && <Cautions cautions={sayCautions(['concentrateLast'])} />}
    </>
  )
}

function Landing({ served }: { served: Served | undefined }) {
  if (served === undefined) return null
  const { strength, error, lands, isInBand } = served
  const miss =
    Math.abs(error) < 0.005
      ? 'as it asks'
      : `${sayNumber(Math.abs(error), 2)} ${error > 0 ? 'above' : 'under'} its own recipe`
  return (
    <p class={isInBand ? 'landing' : 'landing outside'}>
      gets {sayStrength(strength, { units: 'metric' })}, lands at {sayPercent(lands, { units: 'metric' })}, {miss}
      {isInBand ? '' : ': outside its band'}
    </p>
  )
}
