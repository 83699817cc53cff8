import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { SumpNow } from '../api/types.ts'
import { TextField } from '../fields/fields.tsx'
import { later } from '../later.tsx'
import { findStop, matchStops } from './find-stop.ts'
import { useCodeScanner } from './use-code-scanner.ts'

const Camera = later(() => import('./camera.tsx').then(({ Camera }) => Camera))

/** Few enough to tap one. */
const shown = 6

/** Straight to a sump: its label before the camera or a scanner, or a few letters of its name. */
export function Jump({ stops, go }: { stops: readonly SumpNow[]; go(sump: string): void }) {
  const [text, setText] = useState('')
  const [isTried, setTried] = useState(false)
  const [isScanning, setScanning] = useState(false)
  const [strange, setStrange] = useState<string | null>(null)
  const canScan = navigator.mediaDevices !== undefined
  const near = matchStops(text, stops)
  const seen = (code: string) => {
    const stop = findStop(code, stops)
    setStrange(stop === null ? code : null)
    if (stop !== null) go(stop.sump)
    return stop !== null
  }
  useCodeScanner(seen)
  return (
    <div class="jump">
      <form
        aria-label={say('Straight to a sump')}
        onSubmit={(event) => {
          event.preventDefault()
          setTried(true)
          const stop = findStop(text, stops)
          if (stop !== null) go(stop.sump)
        }}
      >
        <TextField
          label={say('Straight to a sump')}
          value={text}
          onInput={(typed) => {
            setText(typed)
            setTried(false)
          }}
          hint={
            canScan
              ? say('The code on its label, or a part of its name')
              : say('A part of its name; the camera reads labels over https only')
          }
          fault={
            isTried && text.trim() !== '' && near.length === 0
              ? say('Found “{text}”; expected the code or the name of a sump of this book.', { text: text.trim() })
              : null
          }
        />
        {near.length > 0 && near.length <= shown && (
          <ul class="jump-to">
            {near.map(({ sump, name, place }) => (
              <li key={sump}>
                <Link href={`/round/${encodeURIComponent(sump)}`} class="button">
                  {name} {place !== null && <span class="quiet">{place}</span>}
                </Link>
              </li>
            ))}
          </ul>
        )}
        {near.length > shown && (
          <p class="note">
            {say('{count, plural, one {# sump fits; type on.} other {# sumps fit; type on.}}', { count: near.length })}
          </p>
        )}
        {canScan && (
          <div class="buttons">
            <button type="button" onClick={() => setScanning(!isScanning)} aria-expanded={isScanning}>
              {isScanning ? say('Close the camera') : say('Read a label')}
            </button>
          </div>
        )}
      </form>
      {isScanning && <Camera seen={(code: string) => seen(code) && setScanning(false)} />}
      {strange !== null && (
        <p class="fault" role="alert">
          {say('The code says “{code}”: no sump of this book.', { code: strange })}
        </p>
      )}
    </div>
  )
}
