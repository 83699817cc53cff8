import type { Finding } from '../api/guidance.ts'

const urgent = { 'act-now': 'Do something now', act: 'Look into it', note: '' }

/** What the last results ask for; words carry how urgent it is. */
export function Findings({ findings }: { findings: readonly Finding[] }) {
  if (findings.length === 0) return null
  return (
    <ul class="findings" aria-label="What the last results ask for">
      {findings.map(({ about, urgency, sentence, source }) => (
        <li key={about} class={urgency === 'note' ? 'finding' : 'finding asks'}>
          {urgent[urgency] !== '' && <span class="tag do">{urgent[urgency]}</span>} {sentence}
          {source !== null && <span class="quiet source"> By {source}.</span>}
        </li>
      ))}
    </ul>
  )
}
