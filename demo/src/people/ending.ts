import type { Ending } from '../shop/sumps.ts'
import type { Manner } from './decide.ts'

/**
 * How people treat a sump in the last days, so that the last day has something of each to show: one filled up with
 * plain water too often, one left to evaporate, one that weeps and was not topped up, one locked away.
 */
export function mannerOf(ending: Ending, daysLeft: number): Manner {
  switch (ending) {
    case 'lean':
      return daysLeft > 17 ? 'usual' : daysLeft >= 3 ? 'water' : 'nothing'
    case 'rich':
      return daysLeft > 20 ? 'usual' : daysLeft >= 7 ? 'careful' : 'nothing'
    case 'low':
      return daysLeft > 10 ? 'usual' : daysLeft >= 4 ? 'careful' : 'nothing'
    case 'unread':
      return daysLeft > lockedDays ? 'usual' : 'nothing'
    case 'at-mark':
      return daysLeft > 10 ? 'usual' : daysLeft >= 1 ? 'careful' : 'nothing'
    case 'in-order':
    case 'oil':
      return daysLeft > 14 ? 'usual' : 'careful'
  }
}

/** Days before the last for which the bar store was locked. */
export const lockedDays = 16

export const isLocked = (ending: Ending, daysLeft: number): boolean => ending === 'unread' && daysLeft <= lockedDays
