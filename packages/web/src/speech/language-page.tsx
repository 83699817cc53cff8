import { type Language, languages, type SystemOfUnits, say, sayStrength, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { ShopOfBook, Units } from '../api/types.ts'
import { Taps } from '../fields/fields.tsx'
import { useObserved } from '../offline/observed.ts'
import { shopUnits } from '../say/units.ts'
import { sayDay } from '../say/when.ts'
import { nothingChosen, numberSigns, type ReadingChoice, speechFor, tongues } from './reading.ts'
import { readAs, thisReading } from './this-reading.ts'
import './speech.css'

/** How this device speaks: language, signs in figures and units, each apart. What is chosen holds at once and for this device alone. */
export function LanguagePage({ shop }: { shop: ShopOfBook | null }) {
  const choice = useObserved(thisReading)
  const [failed, setFailed] = useState(false)
  const change = (changed: Partial<ReadingChoice>) => {
    setFailed(false)
    readAs({ ...choice, ...changed }).catch((error: unknown) => {
      console.error(error)
      setFailed(true)
    })
  }
  const browser = speechFor(nothingChosen, navigator.languages)
  const ofShop = shop === null ? null : (shop.ownUnits ?? shop.units)
  return (
    <div class="language-page">
      <h1>{say('Language, figures, units')}</h1>
      <p class="lede">{say('For this device alone; the shop and what others see stay as they are.')}</p>
      <Taps
        legend={say('Language')}
        name="language"
        value={choice.language ?? ''}
        choices={[
          ['', say('as the browser: {what}', { what: tongues[browser.language] })],
          ...languages.map((language) => [language, tongues[language]] as const),
        ]}
        onPick={(language) => change({ language: language === '' ? null : (language as Language) })}
      />
      <Taps
        legend={say('Figures')}
        name="numbers"
        value={choice.numbers ?? ''}
        choices={[
          ['', say('as the browser: {what}', { what: sample(browser.numbers) })],
          ...numberSigns.map((numbers) => [numbers, sample(numbers)] as const),
        ]}
        onPick={(numbers) => change({ numbers: numbers === '' ? null : numbers })}
      />
      <Taps
        legend={say('Volumes')}
        name="units"
        value={choice.units ?? ''}
        choices={[
          ['', ofShop === null ? say('as the shop') : say('as the shop: {what}', { what: nameOf(ofShop) })],
          ...(Object.keys(shopUnits) as Units[]).map((units) => [units, nameOf(units)] as const),
        ]}
        onPick={(units) => change({ units: units === '' ? null : (units as SystemOfUnits) })}
      />
      {failed && (
        <p class="fault" role="alert">
          {say('The words of this language could not be fetched. Look at the network, then choose it again.')}
        </p>
      )}
      <Example units={choice.units ?? ofShop ?? 'metric'} timeZone={shop?.timeZone} />
    </div>
  )
}

function Example({ units, timeZone = 'UTC' }: { units: Units; timeZone?: string | undefined }) {
  const reader = { units }
  return (
    <p class="quiet">
      {say('{day}: {volume} at {strength}', {
        day: sayDay(new Date().toISOString(), timeZone),
        volume: sayVolume(38.5, reader),
        strength: sayStrength(7.5, reader),
      })}
    </p>
  )
}

/** A figure with all the signs there are. */
const sample = (numbers: string) =>
  new Intl.NumberFormat(numbers, { useGrouping: 'always', minimumFractionDigits: 1 }).format(1234.5)

const nameOf = (units: Units) => say(shopUnits[units].volumeName)
