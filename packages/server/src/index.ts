/** HTTP: the API, its description, and the web app beside it. */
export { type AppParts, buildApp } from './app.ts'
export { type Address, listen } from './listen.ts'
export type { Account } from './people/accounts.ts'
export { openPeople, type People } from './people/people.ts'
export type { PeopleSettings } from './people/people-parts.ts'
export { isRole, type Role, roles } from './people/roles.ts'
export { type Problem, problemOf } from './problems.ts'
