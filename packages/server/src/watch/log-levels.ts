/** How much is logged: every request, only what nobody foresaw, or nothing. */
export const logLevels = ['info', 'warn', 'silent'] as const
export type LogLevel = (typeof logLevels)[number]
