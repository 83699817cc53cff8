import { useEffect, useRef } from 'preact/hooks'

/** A scanner types far faster than a hand: letters further apart than this are a hand's, milliseconds. */
const betweenKeys = 60
/** Shorter ones are a cat on the keys. */
const leastLength = 3

/**
 * A scanner that acts as a keyboard: a burst of letters and Enter, wherever one stands but in a field.
 *
 * @param seen takes what was scanned
 */
export function useCodeScanner(seen: (code: string) => void): void {
  const latest = useRef(seen)
  latest.current = seen
  useEffect(() => {
    let code = ''
    let last = 0
    const take = (event: KeyboardEvent) => {
      if (isField(event.target) || event.ctrlKey || event.altKey || event.metaKey) return
      if (event.timeStamp - last > betweenKeys) code = ''
      last = event.timeStamp
      if (event.key.length === 1) code += event.key
      else if (event.key === 'Enter' && code.length >= leastLength) {
        event.preventDefault()
        latest.current(code)
        code = ''
      }
    }
    document.addEventListener('keydown', take)
    return () => document.removeEventListener('keydown', take)
  }, [])
}

const isField = (target: EventTarget | null) =>
  target instanceof Element && target.closest('input, textarea, select, [contenteditable]') !== null
