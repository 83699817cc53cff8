import { type ComponentChildren, toChildArray } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/**
 * How many parts of a long page are drawn so far, from the top down, one more after each frame: a slow phone shows the first at once and answers
 * a tap between any two. All at once where an address names one of them.
 */
function useGradually(parts: number): number {
  const [drawn, setDrawn] = useState(location.hash === '' ? 1 : Number.POSITIVE_INFINITY)
  const isWhole = drawn >= parts
  useEffect(() => {
    if (isWhole) return
    const timer = setTimeout(() => setDrawn(next))
    return () => clearTimeout(timer)
  }, [isWhole, drawn])
  return drawn
}

/** One by one as far as a screen or two reach; a list of hundreds is not waited for that long. */
const next = (drawn: number) => (drawn < 12 ? drawn + 1 : 2 * drawn)

/**
 * The parts of a long page, drawn one after the other; those that are there are not drawn anew for the next.
 *
 * @param whenWhole called once the last is there, for what stands below
 */
export function Gradually({ children, whenWhole }: { children: ComponentChildren; whenWhole?(): void }) {
  const parts = toChildArray(children)
  const drawn = useGradually(parts.length)
  const isWhole = drawn >= parts.length
  useEffect(() => {
    if (isWhole) whenWhole?.()
  }, [isWhole])
  return <>{parts.slice(0, drawn)}</>
}
