import { message, say } from '@sumpbook/fluid'
import type { Finding } from '../api/guidance.ts'

const urgent = { 'act-now': message('Do something now'), act: message('Look into it'), note: null }

/** What the last results ask for; words carry how urgent it is. */
export function Findings({ findings }: { findings: readonly Finding[] }) {
  if (findings.length === 0) return null
  return (
    <ul class="findings" aria-label={say('What the last results ask for')}>
      {findings.map(({ about, urgency, sentence, source }) => (
        <li key={about} class={urgency === 'note' ? 'finding' : 'finding asks'}>
          {urgent[urgency] !== null && <span class="tag do">{say(urgent[urgency])}</span>} {sentence}
          {source !== null && <span class="quiet source"> {say('By {source}.', { source })}</span>}
        </li>
      ))}
    </ul>
  )
}
