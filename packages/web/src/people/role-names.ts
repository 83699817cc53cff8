import { message } from '@sumpbook/fluid'
import type { Role } from '../api/people.ts'

/** What roles are called, before they are said. */
export const roleNames: Readonly<Record<Role, string>> = {
  reader: message('reader'),
  operator: message('operator'),
  keeper: message('keeper'),
  owner: message('owner'),
}
