import { useLayoutEffect, useState } from 'preact/hooks'

/**
 * The width there is, followed as it changes, so that labels keep their size; 0 until the page stands. What needs it is drawn in a turn of
 * its own, so that a slow phone answers a tap before it.
 */
export function useWidth(frame: { current: HTMLElement | null }): number {
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    if (frame.current === null) return
    let now = 0
    let soon: ReturnType<typeof setTimeout> | null = null
    const observer = new ResizeObserver(([entry]) => {
      now = Math.floor(entry!.contentRect.width)
      soon ??= setTimeout(() => {
        soon = null
        setWidth(now)
      })
    })
    observer.observe(frame.current)
    return () => {
      observer.disconnect()
      if (soon !== null) clearTimeout(soon)
    }
  }, [frame])
  return width
}
