/** What a sheet is called, with where it is worked. */
export function saySheet(
  kind: 'cleanout' | 'change-over' | 'weekend' | 'holidays' | 'mothballed' | 'restart',
  name: string,
): string {
  switch (kind) {
    case 'cleanout':
      return `Cleanout of ${name}`
    case 'change-over':
      return `Another fluid for ${name}`
    case 'weekend':
      return `${name} over the weekend`
    case 'holidays':
      return `${name} over the holidays`
    case 'mothballed':
      return `${name} out of use`
    case 'restart':
      return `${name} back into use`
  }
}
