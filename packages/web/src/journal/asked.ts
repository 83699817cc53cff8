import { say } from '@sumpbook/fluid'
import { type KindGroup, kindGroups } from './kind-groups.ts'

/** What of the journal is looked for; empty text asks for nothing. It lives in the address, so that it can be sent to somebody and gone back to. */
export interface Asked {
  sump: string
  what: KindGroup | ''
  by: string
  from: string
  to: string
  words: string
}

export const askedNothing: Asked = { sump: '', what: '', by: '', from: '', to: '', words: '' }
const fields = Object.keys(askedNothing) as (keyof Asked)[]

/** What an address asks for; what it says that is no day or no group is passed over. */
export function askedIn(search: string): Asked {
  const given = new URLSearchParams(search)
  const text = (field: keyof Asked) => given.get(field)?.trim() ?? ''
  const day = (field: 'from' | 'to') => (isDay(text(field)) ? text(field) : '')
  const what = text('what')
  return {
    sump: text('sump'),
    what: Object.hasOwn(kindGroups, what) ? (what as KindGroup) : '',
    by: text('by'),
    from: day('from'),
    to: day('to'),
    words: text('words'),
  }
}

const isDay = (text: string) => /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(Date.parse(text))

/** The address of the journal that shows this. */
export function journalAddress(asked: Partial<Asked>): string {
  const said = new URLSearchParams(fields.map((field) => [field, asked[field] ?? '']).filter(([, text]) => text !== ''))
  return said.size === 0 ? '/journal' : `/journal?${said}`
}

/** The same as the API asks for it, kinds by name. */
export function questionOf({ what, ...rest }: Asked): string {
  const kind = what === '' ? '' : kindGroups[what][2].join(',')
  const said = Object.entries({ ...rest, kind }).filter(([, text]) => text !== '')
  return new URLSearchParams(said).toString()
}

export const asksForSome = (asked: Asked): boolean => fields.some((field) => asked[field] !== '')

/** "of Mill 1, by MK, pours and fresh charges, from 1 Mar to 31 Mar, with “foam”": what was looked for. */
export function sayAsked(
  { sump, what, by, from, to, words }: Asked,
  called: { sump(id: string): string; day(day: string): string },
): string {
  return [
    what === '' ? '' : say(kindGroups[what][1]),
    sump === '' ? '' : say('of {sump}', { sump: called.sump(sump) }),
    by === '' ? '' : say('by {person}', { person: by }),
    sayDays({ from, to }, called.day),
    words === '' ? '' : say('with “{words}”', { words }),
  ]
    .filter((part) => part !== '')
    .join(', ')
}

function sayDays({ from, to }: Pick<Asked, 'from' | 'to'>, day: (day: string) => string): string {
  if (from !== '' && from === to) return say('on {day}', { day: day(from) })
  if (from !== '' && to !== '') return say('from {from} to {to}', { from: day(from), to: day(to) })
  if (from !== '') return say('since {day}', { day: day(from) })
  return to === '' ? '' : say('up to {day}', { day: day(to) })
}
