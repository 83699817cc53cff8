import { say } from '@sumpbook/fluid'
import { observed } from './observed.ts'

/** Whether the browser promises to keep what this device keeps; null where it does not say. */
export const isPromised = observed<boolean | null>(null)
let isAsked = false

export async function lookAtPromise(): Promise<void> {
  isPromised.set((await navigator.storage?.persisted?.().catch(() => null)) ?? null)
}

/** Asks for the promise, once a visit and once there is something to keep: some browsers put a question to the person. */
export async function askForPromise(): Promise<void> {
  if (isAsked) return
  isAsked = true
  await lookAtPromise()
  if (isPromised.now() !== false) return
  isPromised.set(await navigator.storage.persist().catch(() => false))
}

/** What no promise means; empty where there is one. */
export function sayPromise(promised: boolean | null): string {
  if (promised === true) return ''
  return promised === null
    ? say(
        'This browser does not say that it keeps what waits here: it may clear it when room runs short, and Safari does after seven days without a visit. Go on line within that time; on the home screen the app is kept longer.',
      )
    : say(
        'This browser does not promise that it keeps what waits here: it may clear it when room runs short, and Safari does after seven days without a visit. Go on line within that time; on the home screen the app is kept longer.',
      )
}
