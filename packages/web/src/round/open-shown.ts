import type { OpenAt } from './open-at.ts'
import type { Step } from './use-steps.ts'

/** What is not finished at a stop, as its page shows it. */
export interface OpenShown {
  step: Step
  /** Before anything is read. */
  above: OpenAt
  /** Found since the step that somebody is at was begun: under the rows, so that none of them moves under a thumb. */
  below: OpenAt
}

/**
 * What is not finished here comes first, from the next step on: what the book answers late, or another phone has written meanwhile, moves
 * nothing that is being tapped.
 *
 * @param before as it was shown last; null at first
 */
export function openShown(before: OpenShown | null, step: Step, found: OpenAt): OpenShown {
  const above = before?.step === step ? before.above : found
  return {
    step,
    above,
    below: {
      ...found,
      jobs: found.jobs.filter(({ id }) => above.jobs.every((one) => one.id !== id)),
      findings: found.findings.filter(({ key }) => above.findings.every((one) => one.key !== key)),
    },
  }
}
