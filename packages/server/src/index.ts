/** HTTP: the API, its description, and the web app beside it. */
export { type AppParts, buildApp } from './app.ts'
export { type Address, listen } from './listen.ts'
export { type Account, openPeople, type People, type PeopleSettings } from './people/people.ts'
export { isRole, type Role, roles } from './people/roles.ts'
export { type Problem, problemOf } from './problems.ts'
