import { say } from '../words/index.ts'

/** What a sheet is called, with where it is worked. */
export function saySheet(
  kind: 'cleanout' | 'change-over' | 'weekend' | 'holidays' | 'mothballed' | 'restart',
  name: string,
): string {
  switch (kind) {
    case 'cleanout':
      return say('Cleanout of {name}', { name })
    case 'change-over':
      return say('Another fluid for {name}', { name })
    case 'weekend':
      return say('{name} over the weekend', { name })
    case 'holidays':
      return say('{name} over the holidays', { name })
    case 'mothballed':
      return say('{name} out of use', { name })
    case 'restart':
      return say('{name} back into use', { name })
  }
}
