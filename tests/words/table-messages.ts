import { cautions, shutdownSheet, termProposals } from '@sumpbook/fluid'
import { diagnosisMessages } from './diagnosis-messages.ts'
import { guidanceMessages } from './guidance-messages.ts'

/** What stands in tables of data and is said from there, as `say(cautions[id].text)`. */
export function tableMessages(): string[] {
  return [
    ...Object.values(cautions).map(({ text }) => text),
    ...termProposals.map(({ words }) => words),
    ...(['weekend', 'holidays', 'mothballed', 'restart'] as const).flatMap((kind) =>
      shutdownSheet(kind).flatMap(({ title, text }) => [title, text]),
    ),
    ...diagnosisMessages(),
    ...guidanceMessages(),
  ]
}
