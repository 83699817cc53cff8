import { useState } from 'preact/hooks'
import { later } from '../later.tsx'
import { queueWords } from './queue-words.ts'
import { useStanding } from './use-standing.ts'

const DeviceSheet = later(() => import('./device-sheet.tsx').then(({ DeviceSheet }) => DeviceSheet))

/** "all saved", or what is not, with all of it behind: the entries one by one, the switch to stay off line, what this device keeps. */
export function QueueState() {
  const { words, kind } = queueWords(useStanding())
  const [isOpen, setOpen] = useState(false)
  return (
    <span class={`state ${kind}`}>
      <button type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        <span role="status">{words}</span>
      </button>
      {isOpen && <DeviceSheet close={() => setOpen(false)} />}
    </span>
  )
}
