import { useLayoutEffect, useState } from 'preact/hooks'

/** The width there is, followed as it changes, so that labels keep their size. */
export function useWidth(frame: { current: HTMLElement | null }): number {
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    if (frame.current === null) return
    const observer = new ResizeObserver(([entry]) => setWidth(Math.floor(entry!.contentRect.width)))
    observer.observe(frame.current)
    return () => observer.disconnect()
  }, [frame])
  return width
}
