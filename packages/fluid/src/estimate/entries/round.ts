import type { ShopTime } from '../events.ts'
import type { ShopPriors } from '../priors.ts'

/** A reading of a round with what was expected, before anything of the round was learnt. */
export interface RoundSight {
  entry: string
  sump: string
  at: ShopTime
  read: number
  expected: number
  /** Of the reading about what was expected, without the round's common error. */
  sd: number
}

/** What one instrument shows too much in one round, and what else was read in it. */
export interface RoundOffset {
  /** °Brix. */
  mean: number
  variance: number
  others: readonly RoundSight[]
  /** Probability that the instrument is off by more than instruments are. */
  off: number
}

/** Rounds in which an instrument is grossly off, and by how much (common practice, no source). */
const offPrior = 0.045
const offSd = 0.5
/** A smaller common error is nothing to ask about, °Brix. */
const leastOff = 0.18
/** Readings of a round that are wrong by themselves. */
const wrongPrior = 0.04
const wrongSd = 2.5
/** More than this taken off lately is no single round's matter, °Brix. */
const repeated = 0.12
const step = 0.03
const reach = 48

/** Without other readings beside it, a round's common error is only what instruments usually have. */
export const alone = ({ roundOffset }: ShopPriors): RoundOffset => ({
  mean: 0,
  variance: roundOffset ** 2,
  others: [],
  off: 0,
})

/** So many readings tell a round's error as well as any number of them. */
const enough = 40

/** Evenly chosen readings of a long round. */
function someOf(sights: readonly RoundSight[]): readonly RoundSight[] {
  if (sights.length <= enough) return sights
  return Array.from({ length: enough }, (_, i) => sights[Math.floor((i * sights.length) / enough)]!)
}

const density = (x: number, sd: number) => Math.exp(-0.5 * (x / sd) ** 2) / sd

/**
 * The common error of a round: readings of several sumps by one instrument on one morning that are all high are one doubt of
 * the instrument. Over a grid of errors o
 *
 *     p(o) ∝ [ (1 − p) N(o; 0, usual) + p N(o; 0, gross) ] Π [ (1 − w) N(yᵢ − o; ŷᵢ, sᵢ) + w N(yᵢ; ŷᵢ, wide) ]
 *
 * so that a single misread figure does not move the round.
 *
 * What was taken off the same sumps' readings again and again (`takenOff`, a mean) is no error of one round: what is expected of them is
 * wrong, and the readings must teach it. Only what goes beyond it is taken off, and no second round in a row is called off.
 *
 * Source: Bayes' rule; common practice for how often instruments are off.
 */
export function offsetOf(all: readonly RoundSight[], priors: ShopPriors, takenOff = 0): RoundOffset {
  const sights = someOf(all)
  if (sights.length < 2) return { ...alone(priors), others: all }
  const usual = priors.roundOffset
  const calm = calmOffset(sights, priors, takenOff)
  if (calm !== null) return { ...calm, others: all }
  const offHere = Math.abs(takenOff) > repeated ? 0 : offPrior
  const { length } = sights
  const fine = new Float64Array(3 * length)
  for (const [k, { read, expected, sd }] of sights.entries()) {
    fine[3 * k] = read - expected
    fine[3 * k + 1] = sd
    // A wrong figure is anywhere within degrees: as likely whatever the round's error is.
    fine[3 * k + 2] = wrongPrior * density(read - expected, Math.hypot(wrongSd, sd))
  }
  let [total, gross, mean, square] = [0, 0, 0, 0]
  for (let i = -reach; i <= reach; i++) {
    const o = i * step
    let likely = 1
    for (let k = 0; k < length; k++) {
      likely *= (1 - wrongPrior) * density(fine[3 * k]! - o, fine[3 * k + 1]!) + fine[3 * k + 2]!
    }
    const usually = (1 - offHere) * density(o, usual) * likely
    const off = offHere * density(o, offSd) * likely
    total += usually + off
    gross += off
    mean += o * (usually + off)
    square += o * o * (usually + off)
  }
  if (!(total > 0)) return { ...alone(priors), others: all }
  const middle = mean / total
  const variance = leastVariance(square / total - middle ** 2, usual)
  return {
    mean: beyond(middle, takenOff),
    variance,
    others: all,
    off: sights.length >= 3 && Math.abs(middle) > leastOff ? gross / total : 0,
  }
}

/** What is left of an error after what was taken off already, towards 0 but not past it. */
const beyond = (error: number, takenOff: number) =>
  error * takenOff <= 0 ? error : Math.sign(error) * Math.max(0, Math.abs(error) - Math.abs(takenOff))

/** A round in which nothing is far off needs no grid: the usual error alone, all readings right, is a normal. */
function calmOffset(sights: readonly RoundSight[], { roundOffset }: ShopPriors, takenOff: number): RoundOffset | null {
  let precision = 1 / roundOffset ** 2
  let sum = 0
  for (const { read, expected, sd } of sights) {
    const apart = read - expected
    if (Math.abs(apart) > 2.6 * Math.hypot(sd, roundOffset)) return null
    precision += 1 / sd ** 2
    sum += apart / sd ** 2
  }
  const mean = sum / precision
  if (Math.abs(mean) > 0.12) return null
  return { mean: beyond(mean, takenOff), variance: leastVariance(1 / precision, roundOffset), others: sights, off: 0 }
}

/** One sump's own surprise is in the estimate of the error as well: the error is never taken as known to nothing. */
const leastVariance = (variance: number, usual: number) => Math.max(variance, (0.25 * usual) ** 2)
