import { cautions, say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { SampleLine } from '../api/guidance.ts'
import type { Entry } from '../api/types.ts'
import { stampNow } from '../entry/this-device.ts'
import { Cautions } from '../parts/cautions.tsx'
import { sayPicture, slidePictures } from './slide-pictures.ts'
import { resultEntry } from './test-entries.ts'

/** A slide is read by the picture it looks like most: one tap. */
export function SlideReading({
  sample,
  isBusy,
  write,
}: {
  sample: SampleLine
  isBusy: boolean
  write(entries: Entry[]): Promise<boolean>
}) {
  const [picked, setPicked] = useState<number | null>(null)
  const what = sample.method === 'slide for moulds' ? 'fungi' : 'bacteria'
  const send = () => {
    if (picked !== null) void write([resultEntry(sample, { [what]: slidePictures[picked]!.value }, stampNow())])
  }
  return (
    <div class="slide-reading">
      <p>{say('Hold it against the pictures that came with it. Which does it look like most?')}</p>
      <fieldset class="pictures">
        <legend class="only-read">
          {say(what === 'fungi' ? 'Moulds and yeasts on it, CFU/mL' : 'Bacteria on it, CFU/mL')}
        </legend>
        {slidePictures.map(({ power, value }, n) => (
          <button
            key={power}
            type="button"
            class={picked === n ? 'picture here' : 'picture'}
            aria-pressed={picked === n}
            onClick={() => setPicked(n)}
          >
            <Colonies density={n} />
            <strong>{say(power)}</strong>
            <span>{sayPicture(value)}</span>
          </button>
        ))}
      </fieldset>
      <div class="buttons">
        <button type="button" class="main" disabled={isBusy || picked === null} onClick={send}>
          {say('Write it down')}
        </button>
      </div>
      <Cautions cautions={[say(cautions.grownSlide.text)]} />
    </div>
  )
}

const dots = [0, 3, 9, 22, 48, 96]
/** A step that fills a square evenly and looks like nothing regular: the golden ratio. */
const golden = 0.618_034

/** A patch of agar as thickly grown as the class; an aid to the eye, not the slide's own picture. */
function Colonies({ density }: { density: number }) {
  const places = Array.from({ length: dots[density]! }, (_, n) => ({
    x: 3 + 38 * ((n * golden) % 1),
    y: 3 + 22 * (((n + 0.5) / dots[density]!) % 1),
  }))
  return (
    <svg class="colonies" viewBox="0 0 44 28" aria-hidden="true">
      <rect x="0.5" y="0.5" width="43" height="27" rx="3" />
      {places.map(({ x, y }, n) => (
        <circle key={n} cx={x} cy={y} r={density > 4 ? 1.9 : 1.4} />
      ))}
    </svg>
  )
}
