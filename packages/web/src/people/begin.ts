import { queries } from '../api/queries.ts'

/** Everything is asked anew: who is in may see other things than who was. */
export const begin = () => queries.resetQueries()
