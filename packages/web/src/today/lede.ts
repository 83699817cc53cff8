const handover = /Last shift’s note:.*$/s

/** The last shift's note, as the lede ends with it; null without one. */
export const handoverOf = (lede: string): string | null => handover.exec(lede)?.[0] ?? null

/** The day's sentences alone. */
export const withoutHandover = (lede: string): string => lede.replace(handover, '').trim()
