import { useRef, useState } from 'preact/hooks'
import type { SumpNow } from '../api/types.ts'
import { findStop, isCode } from './find-stop.ts'
import { useCodeScanner } from './use-code-scanner.ts'
import type { Draft } from './walk.ts'

/** Where a scan at a stop leads, and what it must leave as it was. */
export interface ScanHere {
  stops: readonly SumpNow[]
  draft: Draft
  change(draft: Draft): void
  go(sump: string): void
}

/**
 * At a stop a scanner's burst comes into whichever field one is at. It leads to the sump of the label, and what was typed here stays as it was
 * before.
 *
 * @returns a code that is no sump's
 */
export function useScanHere({ stops, draft, change, go }: ScanHere): string | null {
  const [strange, setStrange] = useState<string | null>(null)
  const before = useRef(draft)
  useCodeScanner(
    (code) => {
      const stop = findStop(code, stops)
      setStrange(stop === null ? code : null)
      if (stop !== null) go(stop.sump)
    },
    {
      begins: () => {
        before.current = draft
      },
      isCode: (text) => isCode(text, stops),
      undo: () => change(before.current),
    },
  )
  return strange
}
