import { message, say } from '@sumpbook/fluid'
import type { Entry } from '../api/types.ts'

const words: Partial<Record<Entry['kind'], string>> = {
  receipt: message('{name}: receipt'),
  issue: message('{name}: issue'),
  order: message('{name}: order'),
  check: message('{name}: check'),
  stored: message('{name}: stored'),
  pickup: message('{name}: pickup'),
  setup: message('{name}: setup'),
}

/** What was written about stock or waste, for the queue of things to send. */
export function sayWritten({ kind }: Entry, name: string): string {
  const text = words[kind]
  return text === undefined ? `${name}: ${kind}` : say(text, { name })
}
