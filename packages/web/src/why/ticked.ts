import { type Sign, type SignFamily, type SignId, type Symptoms, say, signFamilies, signs } from '@sumpbook/fluid'

/** A family of signs as the page lists it, with what is ticked of it. */
export interface TickedFamily {
  family: SignFamily
  name: string
  signs: { id: SignId; question: string; isTicked: boolean }[]
  /** Those that are ticked, in words. */
  ticked: SignId[]
}

/** The published list by family, in its order. */
export function familiesWith(ticked: ReadonlySet<SignId>): TickedFamily[] {
  return (Object.keys(signFamilies) as SignFamily[]).map((family) => {
    const those = signs.filter((sign: Sign) => sign.family === family)
    return {
      family,
      name: say(signFamilies[family]),
      signs: those.map(({ id, question }) => ({ id, question: say(question), isTicked: ticked.has(id) })),
      ticked: those.map(({ id }) => id).filter((id) => ticked.has(id)),
    }
  })
}

/** What is weighed with the signs that are ticked here, in the order of the list. */
export const symptomsWith = (symptoms: Symptoms, ticked: ReadonlySet<SignId>): Symptoms => ({
  ...symptoms,
  signs: signs.map(({ id }) => id).filter((id) => ticked.has(id)),
})

/** Ticked here and not yet in the journal. */
export const toWriteDown = (ticked: ReadonlySet<SignId>, written: readonly SignId[]): SignId[] =>
  signs.map(({ id }) => id).filter((id) => ticked.has(id) && !written.includes(id))
