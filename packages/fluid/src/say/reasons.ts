import { message, say } from '../words/index.ts'

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

/** What is proposed to whoever poured nothing. */
export const notPouredReasons = [
  message('no time'),
  message('no concentrate'),
  message('no water'),
  message('machine in use'),
  message('decided against'),
] as const

/** What is proposed to whoever puts something off. */
export const putOffReasons = [
  message('part is on its way'),
  message('machine is running'),
  message('booked for the shutdown'),
  message('somebody is on it'),
] as const

const known: ReadonlySet<string> = new Set([
  ...likelyReasons,
  ...notPouredReasons,
  ...putOffReasons,
  byMistake,
  takenUpAgain,
  notLetIn,
  message('figure of another sump'),
  // What the buttons of the round write.
  message('locked'),
  message('down'),
  message('not poured'),
])

/** Between a reason that was tapped and the word more that was typed. */
const between = '; '

/**
 * A reason as it is recorded, in the language of whoever reads; in a person's own words as they wrote it.
 *
 * @example sayReason('no time; back at two') // "keine Zeit; back at two", where German is spoken
 */
export function sayReason(reason: string): string {
  const [tapped = '', ...typed] = reason.split(between)
  return known.has(tapped) ? [say(tapped), ...typed].join(between) : reason
}

/**
 * What was picked or typed as a reason, as it is recorded: what was proposed in English, whatever language it was picked in.
 *
 * @param proposed where it was picked from: two lists may have one word for two reasons in a language
 */
export const recordedReason = (text: string, proposed: Iterable<string> = known): string =>
  [...proposed].find((reason) => say(reason) === text) ?? text

/** A reason that was tapped, null for none, with the words typed to it, as they are recorded. */
export const reasonWith = (tapped: string | null, typed: string): string =>
  [tapped ?? '', typed.trim()].filter((part) => part !== '').join(between)
