import { say } from '@sumpbook/fluid'
import { useEffect } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { flush, outbox } from '../entry/book-outbox.ts'
import { isOnDevice, stateOf, type Waiting } from '../entry/waiting.ts'
import { RefusedPhotos } from '../photo/refused-photos.tsx'
import { lookAtWaitingPhotos, sendWaitingPhotos } from '../photo/waiting-photos.ts'
import { sayClock } from './clock.ts'
import { useObserved } from './observed.ts'
import { sayPhotos, sayStanding, sayState } from './queue-words.ts'
import { clockAhead, stayOffLine } from './reach.ts'
import { isPromised, lookAtPromise, sayPromise } from './storage-promise.ts'
import { useStanding } from './use-standing.ts'

/** What waits on this device and what has lately arrived, the switch to stay off line, and what the device can promise. */
export function DeviceSheet({ close }: { close(): void }) {
  const standing = useStanding()
  useEffect(() => void lookAtWaitingPhotos(), [])
  const { photos } = standing
  const { all } = standing.view
  const waiting = all.filter(isOnDevice)
  const arrived = all.filter((one) => !isOnDevice(one)).toReversed()
  return (
    <section
      class="queue sheet-over"
      aria-label={say('This device')}
      onKeyDown={({ key }) => {
        if (key === 'Escape') close()
      }}
    >
      <h3>{waiting.length + photos === 0 ? say('This device') : say('Not in the book yet')}</h3>
      <p class="quiet">{sayStanding(standing)}</p>
      {photos > 0 && <p class="quiet">{sayPhotos(standing)}</p>}
      <div class="buttons">
        {standing.staysOffLine ? (
          <button type="button" class="main" onClick={() => stayOffLine(false)}>
            {say('Go back on line')}
          </button>
        ) : (
          <>
            {(photos > 0 || waiting.some((one) => stateOf(one, standing.view.sending) === 'waiting')) && (
              <button type="button" class="main" onClick={() => void flush().then(sendWaitingPhotos)}>
                {say('Send now')}
              </button>
            )}
            <button type="button" onClick={() => stayOffLine(true)}>
              {say('Stay off line')}
            </button>
          </>
        )}
        <button type="button" class="plain" onClick={close}>
          {say('Close')}
        </button>
      </div>
      <DeviceNotes trouble={standing.view.trouble} />
      <p>
        <Link href="/language" onClick={close}>
          {say('Language, figures, units')}
        </Link>
      </p>
      <RefusedPhotos />
      {waiting.length > 0 && (
        <ul>
          {waiting.map((one) => (
            <OnDevice key={one.entry.id} one={one} says={sayState(one, standing)} isRefused={one.problem !== null} />
          ))}
        </ul>
      )}
      {arrived.length > 0 && (
        <details>
          <summary>{say('Lately arrived: {count}', { count: arrived.length })}</summary>
          <ul>
            {arrived.map((one) => (
              <li key={one.entry.id}>
                {one.label} <span class="quiet">· {sayState(one, standing)}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}

function OnDevice({ one, says, isRefused }: { one: Waiting; says: string; isRefused: boolean }) {
  const { entry, label, problem } = one
  return (
    <li>
      <strong>{label}</strong> <span class="quiet">· {says}</span>
      {isRefused && (
        <>
          <div class="fault">
            {problem!.errors?.map(({ pointer, found, expected }) => (
              <div>
                {say('{field}: found {found}, expected {expected}', { field: pointer.slice(1), found, expected })}
              </div>
            )) ??
              problem!.detail ??
              problem!.title}
          </div>
          <div class="buttons">
            {problem!.confirmable === true && (
              <button type="button" onClick={() => void outbox.confirm(entry.id).then(flush)}>
                {say('It is right, send it')}
              </button>
            )}
            <button type="button" onClick={() => void outbox.again(entry.id).then(flush)}>
              {say('Send it again')}
            </button>
            <button type="button" class="plain" onClick={() => void outbox.drop(entry.id)}>
              {say('Throw it away')}
            </button>
          </div>
        </>
      )}
    </li>
  )
}

/** What may go wrong on this device, as far as there is something to say. */
function DeviceNotes({ trouble }: { trouble: string | null }) {
  const ahead = useObserved(clockAhead)
  const promised = useObserved(isPromised)
  useEffect(() => void lookAtPromise(), [])
  const clock = sayClock(ahead)
  const promise = sayPromise(promised)
  return (
    <>
      {trouble !== null && (
        <p class="fault">
          {say(
            'This device did not keep something ({trouble}). What it does not keep is held by this open page only: leave the page open until it is sent, and make room on the device.',
            { trouble },
          )}
        </p>
      )}
      {clock !== '' && <p class="doubt">{clock}</p>}
      {(promise !== '' || !isSecureContext) && (
        <details>
          <summary>{say('What this browser does not promise')}</summary>
          {promise !== '' && <p class="quiet">{promise}</p>}
          {!isSecureContext && (
            <>
              <p class="quiet">
                {say(
                  'Reached by plain http: what you write is kept on this device and sent later, but without a network the app cannot be opened anew, it cannot be put on the home screen to start off line, and the camera reads no labels. All three come with https.',
                )}
              </p>
              <p class="quiet">
                {say(
                  'To get it, whoever looks after the machine of the book runs this there once; it says how to go on. More stands in docs/operations.md, “https in the shop’s network”.',
                )}
              </p>
              <p>
                <code>node scripts/shop-certificate.mjs {location.hostname}</code>
              </p>
            </>
          )}
        </details>
      )}
    </>
  )
}
