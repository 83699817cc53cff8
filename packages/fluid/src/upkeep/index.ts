export { dueDay, firstWorkDay, type Recurring } from './due-day.ts'
export { type Punctuality, punctuality } from './punctuality.ts'
export { sayTask, usualTasks } from './usual-tasks.ts'
