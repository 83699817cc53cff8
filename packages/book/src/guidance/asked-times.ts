import { clockToleranceMs } from '../journal/put.ts'

/** The time of asking, and up to when entries count. */
export interface AskedTimes {
  at: Date
  until: Date
}

/** Now, what a phone whose clock runs a little ahead has just written counts; at a time asked for, nothing after it does. */
export const askedTimes = (asked: string | undefined, now: Date): AskedTimes =>
  asked === undefined
    ? { at: now, until: new Date(now.getTime() + clockToleranceMs) }
    : { at: new Date(asked), until: new Date(asked) }
