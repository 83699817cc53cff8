import { say, sayNumber } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { putEntry } from '../api/client.ts'
import { type GuidanceAnswer, useGuidance } from '../api/guidance.ts'
import type { Book } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { Said } from '../say/said.tsx'
import { changeOf } from '../shop/change-of.ts'
import { readFields } from '../shop/read-fields.ts'
import { textsOf } from '../shop/texts-of.ts'
import type { Texts } from '../shop/thing-field.ts'
import { ThingFields } from '../shop/thing-fields.tsx'
import { useSaving } from '../shop/use-saving.ts'
import { Compare } from './compare.tsx'
import { ownFields } from './own-fields.ts'
import '../shop/shop.css'
import './guidance.css'

/** Whose guidance the shop goes by, its own values, and the packs side by side with their sources. */
export function GuidancePage({ book }: { book: Book }) {
  const answer = useGuidance()
  const { data } = answer
  return (
    <div class="shop-page guidance-page">
      <div class="page-head">
        <h1>{say('Guidance')}</h1>
        <span class="quiet">
          <Link href="/shop">{say('Shop')}</Link>
        </span>
      </div>
      {data === undefined ? (
        answer.error === null ? (
          <p class="quiet">{say('Looking it up …')}</p>
        ) : (
          <p class="fault">{answer.error.message}</p>
        )
      ) : (
        <>
          <Chosen data={data} />
          <Choose data={data} book={book} />
          <Own data={data} book={book} />
          <section class="part" aria-labelledby="side-by-side">
            <h2 id="side-by-side">{say('Side by side')}</h2>
            <Compare data={data} />
          </section>
        </>
      )}
    </div>
  )
}

function Chosen({ data: { chosen, refused } }: { data: GuidanceAnswer }) {
  return (
    <>
      <p class="lede">
        {chosen.outcome === 'none'
          ? say(
              'None is chosen. Countries set different intervals and limits, and where they differ nothing is taken in your place.',
            )
          : say('The shop goes by {guidance}.', { guidance: chosen.name })}
      </p>
      {refused.map(({ name, own, guidance }) => (
        <p key={name} class="note">
          {say(
            '{name}: the shop’s own {own, plural, one {# day} other {# days}} are longer than the {guidance} of the guidance, and do not count.',
            { name, own, guidance: sayNumber(guidance, 0) },
          )}
        </p>
      ))}
      <p class="quiet">
        {say(
          'Guidance only, in our own words: the documents themselves, the fluid’s label and safety data sheet, the supplier and local rules come first. Ask whether a newer edition is in force.',
        )}
      </p>
    </>
  )
}

/** The shop as `changeOf` sees it: only its guidance is changed here. */
const shopThing = ({ shop }: Book) => ({ id: 'shop', name: '', guidance: shop.guidance })

function Choose({ data, book }: { data: GuidanceAnswer; book: Book }) {
  const saving = useSaving()
  const { chosen } = data
  const choose = (pack: string | null, edition: string | null) => {
    const change = changeOf(shopThing(book), { 'guidance.pack': pack, 'guidance.edition': edition })
    if (change === null) return
    void saving.put(() => putEntry(setupEntry({ kind: 'shop', id: 'shop' }, change.changes, change.was, stampNow())))
  }
  const choices = [
    ...data.packs.flatMap(({ id, name, editions }) =>
      editions.map((edition) => ({ pack: id, edition: edition.id, name, words: edition.name, rules: edition.rules })),
    ),
    { pack: data.ownPack, edition: null, name: say('The shop’s own values alone'), words: say('no pack'), rules: [] },
    { pack: null, edition: null, name: say('None'), words: say('only strength has a day'), rules: [] },
  ]
  const isHere = (pack: string | null, edition: string | null) => chosen.pack === pack && chosen.edition === edition
  return (
    <section class="part" aria-labelledby="choose">
      <h2 id="choose">{say('Choose')}</h2>
      {saving.rest.map((sentence) => (
        <p key={sentence} class="fault" role="alert">
          {sentence}
        </p>
      ))}
      {choices.map(({ pack, edition, name, words, rules }) => (
        <div key={`${pack} ${edition}`} class="choice">
          <div class="choice-head">
            <div>
              <strong>{name}</strong>
              <div class="quiet">{words}</div>
            </div>
            {isHere(pack, edition) ? (
              <span class="tag">{say('chosen')}</span>
            ) : (
              <button
                type="button"
                disabled={saving.isBusy}
                aria-label={say('Go by it: {name}, {words}', { name, words })}
                onClick={() => choose(pack, edition)}
              >
                {say('Go by it')}
              </button>
            )}
          </div>
          {rules.length > 0 && (
            <details>
              <summary>{say('What it says, and where')}</summary>
              <ul class="rules">
                {rules.map((rule) => (
                  <li key={rule.id}>
                    <strong>{rule.name}</strong>: {rule.text}. {rule.action}{' '}
                    <span class="quiet source">{rule.source}.</span>
                  </li>
                ))}
              </ul>
            </details>
          )}
        </div>
      ))}
    </section>
  )
}

const toShop = (inside: ComponentChildren) => <Link href="/shop">{inside}</Link>

function Own({ data, book }: { data: GuidanceAnswer; book: Book }) {
  const before = shopThing(book)
  const { units, readEveryDays } = book.shop
  const [texts, setTexts] = useState<Texts | null>(null)
  const saving = useSaving()
  const shown = texts ?? textsOf(before, ownFields, units)
  const read = readFields(shown, ownFields, units, before)
  const submit = async () => {
    saving.setTried(true)
    if ('faults' in read) return
    const change = changeOf(before, read.values)
    const isDone =
      change === null ||
      (await saving.put(() =>
        putEntry(setupEntry({ kind: 'shop', id: 'shop' }, change.changes, change.was, stampNow())),
      ))
    if (isDone) setTexts(null)
  }
  return (
    <section class="part" aria-labelledby="own">
      <h2 id="own">{say('The shop’s own values')}</h2>
      <p class="quiet">
        {say('Empty fields leave what the guidance says. Tighter values count, looser ones do not.')}{' '}
        {data.chosen.outcome === 'none' && `${say('Without guidance they count as they are.')} `}
        {readEveryDays === undefined ? (
          <Said text="Strength is read once a week: <page>change that under Shop</page>." parts={{ page: toShop }} />
        ) : (
          <Said
            text="Strength is read {days, plural, one {every # day} other {every # days}}: <page>change that under Shop</page>."
            values={{ days: readEveryDays }}
            parts={{ page: toShop }}
          />
        )}
      </p>
      <form
        class="thing-edit"
        aria-label={say('The shop’s own values')}
        onSubmit={(event) => {
          event.preventDefault()
          void submit()
        }}
      >
        <ThingFields
          fields={ownFields}
          texts={shown}
          faults={saving.isTried && 'faults' in read ? read.faults : saving.faults(ownFields)}
          units={units}
          change={setTexts}
        />
        {saving.rest.map((sentence) => (
          <p key={sentence} class="fault" role="alert">
            {sentence}
          </p>
        ))}
        <div class="buttons">
          <button type="submit" class="main" disabled={saving.isBusy || texts === null}>
            {say('Write it down')}
          </button>
        </div>
      </form>
    </section>
  )
}
