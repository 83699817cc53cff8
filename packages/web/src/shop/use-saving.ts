import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { OutOfReach, Refusal } from '../api/client.ts'
import { refresh } from '../api/queries.ts'
import { faultsAtFields } from './faults-at-fields.ts'
import type { Faults } from './thing-field.ts'

/** One form on its way to the book: what was said against it, and whether it is under way. */
export function useSaving() {
  const [isTried, setTried] = useState(false)
  const [isBusy, setBusy] = useState(false)
  const [error, setError] = useState<Error | null>(null)
  const errors = error instanceof Refusal ? (error.problem.errors ?? []) : []
  return {
    isTried,
    setTried,
    isBusy,
    faults: (fields: Parameters<typeof faultsAtFields>[1]): Faults => faultsAtFields(errors, fields).at,
    /** What has no field here. */
    rest: (error === null
      ? []
      : error instanceof OutOfReach
        ? [say('The book is out of reach just now: nothing was written. Try again.')]
        : errors.length === 0
          ? [error.message]
          : errors.map(({ pointer, found, expected }) =>
              say('{pointer}: found {found}, expected {expected}', {
                pointer: pointer.replace(/^\/changes\//, ''),
                found,
                expected,
              }),
            )) as string[],
    /** @returns whether the book took it */
    async put(send: () => Promise<unknown>): Promise<boolean> {
      setBusy(true)
      setError(null)
      try {
        await send()
        await refresh()
        return true
      } catch (caught) {
        if (!(caught instanceof Refusal || caught instanceof OutOfReach)) throw caught
        setError(caught)
        return false
      } finally {
        setBusy(false)
      }
    },
  }
}
