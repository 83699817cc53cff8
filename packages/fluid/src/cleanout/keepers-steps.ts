import { judgedStages } from './sheet.ts'
import { shutdownKinds, shutdownSheet } from './shutdown.ts'

const keepers = new Set<string>([
  ...judgedStages,
  ...shutdownKinds.flatMap((kind) => shutdownSheet(kind).filter(({ signs }) => signs === 'keeper')).map(({ id }) => id),
])

/**
 * Whether a keeper signs this step, whatever sheet it is on.
 *
 * @param step as a sign-off names it; a step that is done again carries a number: `rinse-check-2`
 */
export const isKeepersStep = (step: string): boolean => keepers.has(step.replace(/-\d+$/, ''))
