import { useState } from 'preact/hooks'
import { later } from '../later.tsx'
import { withItsWords } from '../speech/this-reading.ts'
import { queueWords } from './queue-words.ts'
import { useStanding } from './use-standing.ts'

const load = () => withItsWords(import('./device-sheet.tsx')).then(({ DeviceSheet }) => DeviceSheet)
const DeviceSheet = later(load)

/** It is wanted most when it can no longer be fetched. */
export const fetchDeviceSheet = (): Promise<unknown> => load()

/** "all saved", or what is not, with all of it behind: the entries one by one, the switch to stay off line, what this device keeps. */
export function QueueState() {
  const { words, kind } = queueWords(useStanding())
  const [isOpen, setOpen] = useState(false)
  return (
    <span class={kind === 'calm' ? 'state at-rest' : 'state'}>
      <button type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        <span aria-live="polite">{words}</span>
      </button>
      {isOpen && <DeviceSheet close={() => setOpen(false)} />}
    </span>
  )
}
