import { say } from '../words/index.ts'

/** A sign or a finding as people read it; entries and answers keep its word. @example sayFinding('foam') // in German 'Schaum' */
export const sayFinding = (id: string): string => say(id)

/** What a cause is called where it stands alone: "Bacterial growth". */
export const causeName = (id: string): string => id[0]!.toUpperCase() + id.slice(1)
