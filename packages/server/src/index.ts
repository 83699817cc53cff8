/** HTTP: the API, its description, and the web app beside it. */
export { type AppParts, buildApp } from './app.ts'
export { type Address, listen } from './listen.ts'
export { type Problem, problemOf } from './problems.ts'
