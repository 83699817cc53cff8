import { say } from '@sumpbook/fluid'
import { useEffect, useRef } from 'preact/hooks'
import './at-once.css'

/** What must be done at once: before and above everything else. With `comesIntoView` it is never left below the edge of the screen. */
export function AtOnce({ stop, comesIntoView = false }: { stop: readonly string[]; comesIntoView?: boolean }) {
  const box = useRef<HTMLElement>(null)
  useEffect(() => {
    if (comesIntoView) box.current?.scrollIntoView({ block: 'nearest' })
  }, [stop.join()])
  if (stop.length === 0) return null
  return (
    <section ref={box} class="at-once" role="alert" aria-labelledby="at-once">
      <h2 id="at-once">{say('At once')}</h2>
      <ul>
        {stop.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  )
}
