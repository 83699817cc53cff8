import { causeName, causes, signFamilies, signs } from '@sumpbook/fluid'
import { nextChecks } from '../../packages/fluid/src/diagnosis/next-checks.ts'
import { stops } from '../../packages/fluid/src/diagnosis/stops.ts'
import { findings } from '../../packages/fluid/src/diagnosis/tables.ts'

/** What the tables of the diagnosis say: signs and their questions, causes, checks, remedies, stops. */
export const diagnosisMessages = (): string[] => [
  ...Object.values(signFamilies),
  ...findings,
  ...signs.map(({ question }) => question),
  ...nextChecks.flatMap(({ does, takes }) => [does, takes]),
  ...stops.map(({ once }) => once),
  ...causes.flatMap(({ id, says, checks, remedies }) => [
    causeName(id),
    says,
    ...checks,
    ...remedies.map((remedy) => (typeof remedy === 'string' ? remedy : remedy.after)),
  ]),
]
