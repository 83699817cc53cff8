import { studentQuantile } from '../statistics/student.ts'
import { type CalibrationPoint, fitLine } from './line.ts'

/** How far points bend away from their straight line. */
export interface Curvature {
  /** The bend is more than scatter explains, at 95 %. */
  bent: boolean
  /** The farthest that a bent line through the points lies from the straight one, in units of x, at the points themselves. */
  farthest: number
}

/**
 * Whether points lie on a straight line: a square term is added to it, and its coefficient c is held against its own standard deviation.
 *
 *     y = intercept + slope · x + c · x²            bent where |c| > t · cSd        t of Student, 95 %
 *
 * Few points see only a strong bend: four mixes leave one degree of freedom, and t is 12.7. Null where nothing is left to judge by.
 *
 * Source: N. R. Draper, H. Smith, Applied Regression Analysis (extra sum of squares for one more term).
 *
 * @example curvatureOf([1, 2, 3, 4, 5].map((x) => ({ x, y: x * x }))) // { bent: true, … }
 */
export function curvatureOf(points: readonly CalibrationPoint[], { throughZero = false } = {}): Curvature | null {
  const line = fitLine(points, { throughZero })
  const degreesOfFreedom = line.degreesOfFreedom - 1
  const square = fitLine(
    points.map(({ x }) => ({ x, y: x ** 2 })),
    { throughZero },
  )
  const largestX = Math.max(...points.map(({ x }) => Math.abs(x)))
  // Two different x (one, through zero) lie on a straight line whatever they read.
  if (degreesOfFreedom < 1 || square.residualSquares <= 1e-18 * largestX ** 4) return null

  // What is left of x² and of y once each has been fitted by a straight line.
  const bends = points.map(({ x }) => x ** 2 - square.intercept - square.slope * x)
  const rests = points.map(({ x, y }) => y - line.intercept - line.slope * x)
  const common = bends.reduce((sum, bend, i) => sum + bend * rests[i]!, 0)
  const c = common / square.residualSquares
  const farthest = Math.max(...bends.map((bend) => Math.abs((c * bend) / line.slope)))
  const largestY = Math.max(...points.map(({ y }) => Math.abs(y)))
  if (line.residualSquares <= points.length * (1e-10 * largestY) ** 2) return { bent: false, farthest: 0 }
  const explained = common ** 2 / square.residualSquares
  const left = Math.max(0, line.residualSquares - explained) / degreesOfFreedom
  const t = studentQuantile({ probability: 0.975, degreesOfFreedom })
  return { bent: explained > t ** 2 * left, farthest }
}
