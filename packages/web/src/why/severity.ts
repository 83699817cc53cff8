import { message, say } from '@sumpbook/fluid'

/** How strong a sign is, as it is tapped; entries keep the English word. */
export const severities: readonly string[] = [message('slight'), message('clear'), message('strong')]

/** What was written elsewhere in other words stays as it was written. */
export const saySeverity = (severity: string): string => (severities.includes(severity) ? say(severity) : severity)
