import { observed } from '../offline/observed.ts'

/** How many pictures that entries name are not in the book yet. */
export const waitingPhotos = observed(0)
/** Names of those that the book did not take. */
export const refusedPhotos = observed<readonly string[]>([])
