import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { OutOfReach, Refusal } from '../api/client.ts'

/** One request of a form: whether it is under way, what was said against it, and where. */
export function useAsking() {
  const [isBusy, setBusy] = useState(false)
  const [error, setError] = useState<Refusal | OutOfReach | null>(null)
  const faults = error instanceof Refusal ? (error.problem.errors ?? []) : []
  return {
    isBusy,
    /** What is wrong with a field. */
    fault: (field: string): string | null => {
      const fault = faults.find(({ pointer }) => pointer === `/${field}`)
      return fault === undefined
        ? null
        : say('Found {found}; expected {expected}.', { found: fault.found, expected: fault.expected })
    },
    /** What is wrong and has no field. */
    rest: error !== null && faults.length === 0 ? error.message : null,
    /** @returns whether it was done */
    async ask(send: () => Promise<unknown>): Promise<boolean> {
      setBusy(true)
      setError(null)
      try {
        await send()
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
