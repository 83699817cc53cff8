import { useEffect, useRef } from 'preact/hooks'

/** A scanner types far faster than a hand: letters further apart than this are a hand's, milliseconds. */
const betweenKeys = 60
/** In a field only a whole code counts as one, so that a scanner without a wire may stammer. */
const betweenKeysInField = 250
/** Shorter ones are a cat on the keys. */
const leastLength = 3

/** How a burst is told from what is typed where it comes into a field, and taken out of it again. */
interface InFields {
  /** A key that may be the first of a burst, before the field has it. */
  begins(): void
  /** Whether it can only be a code. */
  isCode(text: string): boolean
  /** What the field has of the burst is none of its own. */
  undo(): void
}

/**
 * A scanner that acts as a keyboard: a burst of letters and Enter, wherever one stands; in a field only where somebody tells the two apart.
 *
 * @param seen takes what was scanned
 */
export function useCodeScanner(seen: (code: string) => void, inFields: InFields | null = null): void {
  const latest = useRef({ seen, inFields })
  latest.current = { seen, inFields }
  useEffect(() => {
    let code = ''
    let last = 0
    const take = (event: KeyboardEvent) => {
      const { seen: hand, inFields: fields } = latest.current
      const inField = isField(event.target)
      if ((inField && fields === null) || event.ctrlKey || event.altKey || event.metaKey) return
      if (event.timeStamp - last > (inField ? betweenKeysInField : betweenKeys)) {
        code = ''
        if (inField) fields!.begins()
      }
      last = event.timeStamp
      if (event.key.length === 1) code += event.key
      else if (event.key === 'Enter' && code.length >= leastLength) {
        const text = code
        code = ''
        if (inField) {
          if (!fields!.isCode(text)) return
          fields!.undo()
          // The field's own Enter would go on to the next one.
          event.stopPropagation()
        }
        event.preventDefault()
        hand(text)
      }
    }
    document.addEventListener('keydown', take, { capture: true })
    return () => document.removeEventListener('keydown', take, { capture: true })
  }, [])
}

const isField = (target: EventTarget | null) =>
  target instanceof Element && target.closest('input, textarea, select, [contenteditable]') !== null
