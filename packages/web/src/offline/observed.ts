import { useEffect, useState } from 'preact/hooks'

/** A value of this page that parts of it watch. */
export interface Observed<T> {
  now(): T
  /** Tells who watches, where it is another. */
  set(next: T): void
  subscribe(listener: () => void): () => void
}

export function observed<T>(first: T): Observed<T> {
  const listeners = new Set<() => void>()
  let value = first
  return {
    now: () => value,
    set(next) {
      if (Object.is(next, value)) return
      value = next
      for (const listener of listeners) listener()
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}

/** The value as it changes. */
export function useObserved<T>(of: Observed<T>): T {
  const [value, setValue] = useState(() => of.now())
  useEffect(() => {
    const look = () => setValue(() => of.now())
    look()
    return of.subscribe(look)
  }, [of])
  return value
}
