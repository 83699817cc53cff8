import { message, say } from '../words/index.ts'

const germs = message('CFU/mL')

/** A unit as the reader's language writes it: of those the book holds only colony-forming units are called otherwise ("KBE/mL", "UFC/mL"). */
export const sayUnit = (unit: string): string => (unit === germs ? say(germs) : unit)
