export type { Cost, CostPart, Habits, Lives, SumpCost, SumpHabit, SumpLife } from './answer-types.ts'
export { type HabitQuestion, readHabits } from './habits.ts'
export { type LifeQuestion, readLives } from './life-of-sumps.ts'
export { type CostQuestion, readCost } from './read-cost.ts'
