import { message, say } from '@sumpbook/fluid'

/** Why the app itself withdraws an entry. */
export const byMistake = message('written down by mistake')
export const takenUpAgain = message('taken up again before its end')
export const notLetIn = message('not let in')

/** What is proposed to whoever sets a reading aside. */
export const likelyReasons = [
  message('misread'),
  message('wrong machine'),
  message('typed wrong'),
  message('sample too soon after a top-up'),
] as const

const known: readonly string[] = [
  ...likelyReasons,
  byMistake,
  takenUpAgain,
  notLetIn,
  message('figure of another sump'),
]

/** A reason as it is recorded, in the language of whoever reads; in a person's own words as they wrote it. */
export const sayReason = (reason: string): string => (known.includes(reason) ? say(reason) : reason)

/** What was picked or typed as a reason, as it is recorded: the app's own ones in English, whatever language they were picked in. */
export const recordedReason = (text: string): string => known.find((reason) => say(reason) === text) ?? text
