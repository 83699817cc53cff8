import { BookError, type Fault, refusal } from '@sumpbook/book'

/** Somebody tries too often; says when it goes on. */
export class TooManyTries extends BookError {
  readonly retryAfterSeconds: number

  constructor(seconds: number) {
    const minutes = Math.ceil(seconds / 60)
    super('too-many-tries', `Too many tries. It goes on in ${minutes === 1 ? 'a minute' : `${minutes} minutes`}.`)
    this.retryAfterSeconds = seconds
  }
}

/** @throws {BookError} `refused-input`: where anything is wrong with what somebody chose */
export function refuseFaults(...found: readonly (Fault | null)[]): void {
  const faults = found.filter((fault) => fault !== null)
  if (faults.length > 0) throw refusal(faults, 'account')
}

export const signInNeeded = (): BookError => new BookError('sign-in-needed', 'Sign in first.')

export const notAllowed = (why: string): BookError => new BookError('not-allowed', why)

/** One sentence for every way of being wrong: it does not tell which names there are. */
export const wrongCredentials = (): BookError =>
  new BookError('wrong-credentials', 'Name and password do not belong together here.')

export const wrongCode = (): BookError =>
  new BookError('wrong-credentials', 'This code is wrong, was used already, or is too old.')
