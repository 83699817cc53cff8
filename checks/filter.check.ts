/**
 * The filter under the estimate, on series whose answers are published.
 *
 * Nile at Aswan 1871–1970 as a local level, J. Durbin, S. J. Koopman, Time Series Analysis by State Space Methods (2nd ed. 2012), chapter 2:
 * variances 15099 and 1469.1, table 2.1 (from memory, computed anew), diagnostics of page 40 (read in the tests of statsmodels). Log-likelihoods
 * −632.54421, −632.5376 and −640.98974: read in the tests of the MATLAB package ssmjl. Level 798.37 with standard error 63.50 in 1970: output of the R
 * package KFAS, from memory. Year by year (data/nile-level.csv): computed by an independent program in Python, exact diffuse start, its ends and
 * steady state equal to the published ones. A diffuse start makes the first level the first flow with the flow's own variance; it is begun there.
 *
 * Exact diffuse local level of ten values: R package KFAS, kept in the tests of statsmodels (read; the column "sumPtt" holds half the variance, so
 * filtered variances were computed anew).
 *
 * Constant velocity, and constant acceleration with a wild value: files kept with the tests of Hipparchus (read), the second from Apache Commons
 * Math. Two states of a linear model at three readings: S. Särkkä's EKF/UKF toolbox for MATLAB, as kept in the tests of pykalman (read). Radar:
 * unscented filter of filterpy, as kept by Hipparchus (read); extended filter computed by an independent program in Python.
 *
 * Tolerance: half of the last digit given; where all digits of a double are given, 1e-12 of the figure (rounding in another order). Log-likelihoods that
 * were published at a maximum are compared at rounded variances, which at a maximum costs less than 1e-4.
 */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import {
  type Belief,
  blur,
  learn,
  newBelief,
  newTape,
  shake,
  smooth,
  spread,
  stopHere,
} from '../packages/fluid/src/filter/index.ts'

const rowsOf = (file: string, separator: string | RegExp) =>
  readFileSync(new URL(`data/${file}`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .map((row) => row.split(separator))

const years = rowsOf('nile-level.csv', ',')
  .slice(1)
  .map((row) => row.map(Number) as [number, number, number, number, number, number])
  .map(([year, flow, level, variance, smoothed, smoothedVariance]) => ({
    year,
    flow,
    level,
    variance,
    smoothed,
    smoothedVariance,
  }))
const flows = years.map(({ flow }) => flow)

interface Variances {
  ofReading: number
  ofLevel: number
}
const nile: Variances = { ofReading: 15_099, ofLevel: 1469.1 }

interface LevelStart {
  mean: number
  variance: number
}

/** What a local level came to at one reading. */
interface LevelStep {
  /** Before the reading. */
  predicted: number
  predictedVariance: number
  level: number
  variance: number
  surprise: number
  surpriseVariance: number
}

const seen = Float64Array.of(1)

/** A level that wanders, read at each step; null is a step without a reading. */
function localLevel(
  values: readonly (number | null)[],
  { ofReading, ofLevel }: Variances,
  start: LevelStart,
): LevelStep[] {
  const belief = newBelief(1)
  belief.mean[0] = start.mean
  belief.cov[0] = start.variance
  return values.map((value, i) => {
    if (i > 0) blur(belief, 0, ofLevel)
    const [predicted, predictedVariance] = [belief.mean[0]!, belief.cov[0]!]
    const surprise = value === null ? Number.NaN : value - predicted
    const surpriseVariance = value === null ? Number.NaN : learn(belief, seen, surprise, ofReading)
    return {
      predicted,
      predictedVariance,
      level: belief.mean[0]!,
      variance: belief.cov[0]!,
      surprise,
      surpriseVariance,
    }
  })
}

/** After a diffuse start the first reading is all that is known. */
const diffuse = (values: readonly (number | null)[], variances: Variances): LevelStep[] =>
  localLevel([null, ...values.slice(1)], variances, { mean: values[0]!, variance: variances.ofReading })

/** Of the steps that had a reading. */
const logLikelihood = (steps: readonly LevelStep[]): number =>
  steps
    .filter(({ surprise }) => !Number.isNaN(surprise))
    .reduce(
      (sum, { surprise, surpriseVariance }) =>
        sum - 0.5 * (Math.log(2 * Math.PI * surpriseVariance) + surprise ** 2 / surpriseVariance),
      0,
    )

const vague = (variance: number) => ({ mean: 0, variance })

test('the Nile year by year: level and variance after each flow', () => {
  const steps = diffuse(flows, nile)
  expect(steps).toHaveLength(100)
  for (const [i, { level, variance }] of steps.entries()) {
    expect(Math.abs(level - years[i]!.level)).toBeLessThan(0.6e-6)
    expect(Math.abs(variance - years[i]!.variance)).toBeLessThan(0.6e-6)
  }
})

test('the Nile before each flow: the level stays, its variance grows by 1469.1', () => {
  for (const [i, { predicted, predictedVariance }] of diffuse(flows, nile).entries()) {
    if (i === 0) continue
    expect(Math.abs(predicted - years[i - 1]!.level)).toBeLessThan(0.6e-6)
    expect(Math.abs(predictedVariance - years[i - 1]!.variance - 1469.1)).toBeLessThan(0.6e-6)
  }
})

test('the Nile ends at 798.37 with a standard error of 63.50', () => {
  const last = diffuse(flows, nile).at(-1)!
  expect(last.level).toBeCloseTo(798.37, 2)
  expect(Math.sqrt(last.variance)).toBeCloseTo(63.5, 2)
})

test('the Nile comes to a steady state: 5501.26 before a flow, 4032.16 after it, a gain of 0.267', () => {
  const { predictedVariance, variance, surpriseVariance } = diffuse(flows, nile).at(-1)!
  expect(predictedVariance).toBeCloseTo(5501.257942, 6)
  expect(variance).toBeCloseTo(4032.157942, 6)
  expect(predictedVariance / surpriseVariance).toBeCloseTo(0.26704801, 8)
  // The root of P² = 1469.1 P + 1469.1 · 15099.
  expect(predictedVariance).toBeCloseTo((1469.1 + Math.sqrt(1469.1 ** 2 + 4 * 1469.1 * 15_099)) / 2, 6)
})

test.each([
  [1, 1118.311462, 15_076.2364],
  [2, 1140.108439, 7894.5575],
  [3, 1072.316018, 5779.4974],
  [5, 1129.735808, 4478.2778],
  [10, 1162.854824, 4051.2659],
])('the Nile from nothing known (variance 10⁷): after flow %d %d, variance %d', (n, level, variance) => {
  const step = localLevel(flows, nile, vague(1e7))[n - 1]!
  expect(step.level).toBeCloseTo(level, 6)
  expect(step.variance).toBeCloseTo(variance, 4)
})

/** Level and variance of each step by all readings, those after it included. */
function lookedBack(values: readonly (number | null)[], { ofReading, ofLevel }: Variances, first: LevelStart) {
  const belief = newBelief(1)
  belief.tape = newTape()
  belief.mean[0] = first.mean
  belief.cov[0] = first.variance
  for (const [i, value] of values.entries()) {
    if (i > 0) blur(belief, 0, ofLevel)
    if (value !== null) learn(belief, seen, value - belief.mean[0]!, ofReading)
    stopHere(belief, i)
  }
  return smooth(belief).map(({ label, mean, cov }) => ({ label, level: mean[0]!, variance: cov[0]! }))
}

const diffuseBack = (values: readonly (number | null)[], variances: Variances) =>
  lookedBack([null, ...values.slice(1)], variances, { mean: values[0]!, variance: variances.ofReading })

test('the Nile looked back at: level and variance of each year by all flows', () => {
  const back = diffuseBack(flows, nile)
  expect(back.map(({ label }) => label)).toEqual(years.map((_, i) => i))
  for (const [i, { level, variance }] of back.entries()) {
    expect(Math.abs(level - years[i]!.smoothed)).toBeLessThan(0.6e-6)
    expect(Math.abs(variance - years[i]!.smoothedVariance)).toBeLessThan(0.6e-6)
  }
  const first = lookedBack(flows, nile, vague(1e7))[0]!
  expect(first.level).toBeCloseTo(1111.220258, 6)
  expect(first.variance).toBeCloseTo(4030.5328, 4)
})

test('the largest surprises of the Nile are 1899, −359, and 1913, −400 or 2.79 standard deviations', () => {
  const steps = diffuse(flows, nile)
  expect(steps[1899 - 1871]!.surprise).toBeCloseTo(-359.126, 3)
  const { surprise, surpriseVariance } = steps[1913 - 1871]!
  expect(surprise).toBeCloseTo(-400.327, 3)
  expect(surprise / Math.sqrt(surpriseVariance)).toBeCloseTo(-2.79, 2)
})

test('how likely the Nile is, by how the start is set up', () => {
  const fromWide = localLevel(flows, nile, vague(1e7))
  expect(logLikelihood(fromWide)).toBeCloseTo(-641.5855784594, 9)
  // Published: −632.54421, the first term left out.
  expect(logLikelihood(fromWide.slice(1))).toBeCloseTo(-632.54421, 5)
  expect(logLikelihood(fromWide.slice(1))).toBeCloseTo(-632.5442122783, 9)
  const fromNarrower = localLevel(flows, nile, vague(1e6))
  expect(logLikelihood(fromNarrower)).toBeCloseTo(-640.9897527, 8)
  // Published at the likeliest variances: −640.98974 and −632.5376.
  expect(Math.abs(logLikelihood(fromNarrower) + 640.98974)).toBeLessThan(1e-4)
  expect(Math.abs(logLikelihood(fromNarrower.slice(1)) + 632.5376)).toBeLessThan(1e-4)
  const exact = logLikelihood(diffuse(flows, nile))
  expect(exact).toBeCloseTo(-632.5456251157, 9)
  expect(exact - 0.5 * Math.log(2 * Math.PI)).toBeCloseTo(-633.4645636489, 9)
  const likeliest = logLikelihood(diffuse(flows, { ofReading: 15_098.5195, ofLevel: 1469.176 }))
  expect(likeliest).toBeCloseTo(-632.545625103, 9)
  expect(likeliest).toBeGreaterThan(exact)
})

test.each([
  [1, -495.68],
  [0.036, -492.53],
  [0.0745, -492.1],
  [0.0974, -492.07],
  [0.0973, -492.07],
])('Durbin and Koopman, table 2.1: at a ratio of variances of %d the log-likelihood is %d', (ratio, published) => {
  // With the variance of a reading put at its likeliest, s² = Σ v²/F* / (n − 1): −(n − 1)/2 ln s² − ½ Σ ln F*.
  const steps = diffuse(flows, { ofReading: 1, ofLevel: ratio }).slice(1)
  const likeliest =
    steps.reduce((sum, { surprise, surpriseVariance }) => sum + surprise ** 2 / surpriseVariance, 0) / 99
  const concentrated =
    -49.5 * Math.log(likeliest) - 0.5 * steps.reduce((sum, one) => sum + Math.log(one.surpriseVariance), 0)
  // −495.6851 is printed as −495.68.
  expect(Math.abs(concentrated - published)).toBeLessThan(0.0055)
  if (ratio === 0.0973) expect(likeliest).toBeCloseTo(15_098.658, 3)
})

test('Durbin and Koopman, page 40: surprises over their standard deviations are as normal as printed', () => {
  const scaled = diffuse(flows, nile)
    .slice(1)
    .map(({ surprise, surpriseVariance }) => surprise / Math.sqrt(surpriseVariance))
  const n = scaled.length
  const mean = scaled.reduce((sum, e) => sum + e, 0) / n
  const moment = (k: number) => scaled.reduce((sum, e) => sum + (e - mean) ** k, 0) / n
  const skewness = moment(3) / moment(2) ** 1.5
  const kurtosis = moment(4) / moment(2) ** 2
  expect(skewness).toBeCloseTo(-0.03, 2)
  expect(kurtosis).toBeCloseTo(3.09, 2)
  expect(n * (skewness ** 2 / 6 + (kurtosis - 3) ** 2 / 24)).toBeCloseTo(0.05, 2)
  const squares = (values: readonly number[]) => values.reduce((sum, e) => sum + e ** 2, 0)
  expect(squares(scaled.slice(-33)) / squares(scaled.slice(0, 33))).toBeCloseTo(0.61, 2)
  const correlation = (lag: number) =>
    scaled.slice(lag).reduce((sum, e, i) => sum + (e - mean) * (scaled[i]! - mean), 0) / n / moment(2)
  let portmanteau = 0
  for (let lag = 1; lag <= 9; lag++) portmanteau += (n * (n + 2) * correlation(lag) ** 2) / (n - lag)
  expect(portmanteau).toBeCloseTo(8.84, 2)
})

test.each([
  [1, 20_600.257942],
  [2, 22_069.357942],
  [5, 26_476.657942],
  [10, 33_822.157942],
  [30, 63_204.157942],
])('the Nile %d years after 1970 is forecast at 798.37 with a variance of %d', (ahead, variance) => {
  const steps = diffuse([...flows, ...Array<null>(ahead).fill(null)], nile)
  expect(steps.at(-1)!.level).toBeCloseTo(798.370293, 6)
  expect(steps.at(-1)!.predictedVariance + nile.ofReading).toBeCloseTo(variance, 6)
})

const withGaps = flows.map((flow, i) => ((i >= 20 && i < 40) || (i >= 60 && i < 80) ? null : flow))

test.each([
  [20, 1026.1416, 4032.1962],
  [21, 1026.1416, 5501.2962],
  [30, 1026.1416, 18_723.1962],
  [40, 1026.1416, 33_414.1962],
  [41, 889.9497, 10_537.789],
  [70, 834.2614, 18_723.1868],
  [100, 798.3151, 4032.1868],
])('the Nile without flows 21–40 and 61–80: after flow %d %d, variance %d', (n, level, variance) => {
  const step = diffuse(withGaps, nile)[n - 1]!
  expect(step.level).toBeCloseTo(level, 4)
  expect(step.variance).toBeCloseTo(variance, 4)
})

test.each([
  [20, 999.7127, 3614.4034],
  [21, 990.0835, 4723.6042],
  [30, 903.4211, 9715.0059],
  [40, 807.1295, 4723.5975],
  [41, 797.5004, 3614.396],
  [70, 837.1773, 9715.0055],
])('the Nile looked back at over its gaps: at flow %d %d, variance %d', (n, level, variance) => {
  const step = diffuseBack(withGaps, nile)[n - 1]!
  expect(step.level).toBeCloseTo(level, 4)
  expect(step.variance).toBeCloseTo(variance, 4)
})

test('how likely the Nile with its gaps is: −379.9899, the first flow left out', () => {
  const [first, ...others] = localLevel(withGaps, { ofReading: 17_921.75, ofLevel: 678.055 }, vague(1e6))
  expect(first!.surprise).toBe(1120)
  expect(Math.abs(logLikelihood(others) + 379.9899)).toBeLessThan(1e-4)
  expect(logLikelihood(diffuse(withGaps, { ofReading: 17_899.84, ofLevel: 685.82 }))).toBeCloseTo(-380.0077, 4)
})

/** KFAS: sigma²_ε 1.993, sigma²_η 8.253. */
const kfas = { ofReading: 1.993, ofLevel: 8.253 }
const tenValues = [10.2394, 1, 1, 1, 1, 1, 1, 1, 1, 1]

test('ten values by KFAS: levels, variances before and after, and how likely', () => {
  const steps = diffuse(tenValues, kfas)
  const levels = [
    10.2394, 2.50454483209413, 1.25167384265698, 1.04213018651369, 1.00705273739524, 1.00118065306293, 1.00019764548141,
    1.00003308654978, 1.00000553880498, 1.00000092721546,
  ]
  for (const [i, level] of levels.entries()) expect(steps[i]!.level).toBeCloseTo(level, 13)
  const before = [10.246, 9.92145967807827, 9.91261946010793, 9.91237191678189, 9.9123649797953]
  for (const [i, variance] of before.entries()) expect(steps[i + 1]!.predictedVariance).toBeCloseTo(variance, 12)
  const after = [1.993, 1.6684596781, 1.6596194601, 1.6593719168, 1.6593649798]
  for (const [i, variance] of after.entries()) expect(steps[i]!.variance).toBeCloseTo(variance, 10)
  expect(steps[1]!.surpriseVariance).toBeCloseTo(12.239, 12)
  expect(logLikelihood(steps)).toBeCloseTo(-23.0163218509366, 12)
})

test('ten values by KFAS looked back at', () => {
  const levels = [
    8.69269189482201, 2.28778372019385, 1.21557953089427, 1.03608877283924, 1.00604138771061, 1.00101134968464,
    1.0001693041059, 1.00002834572536, 1.00000476680865, 1.00000092721546,
  ]
  const variances = [
    1.65936477978876, 1.42808320855318, 1.4216017878374, 1.42142015300846, 1.42141506687939, 1.42141506687939,
    1.42142015300846, 1.4216017878374, 1.42808320855317, 1.65936477978876,
  ]
  for (const [i, { level, variance }] of diffuseBack(tenValues, kfas).entries()) {
    expect(level).toBeCloseTo(levels[i]!, 13)
    expect(variance).toBeCloseTo(variances[i]!, 13)
  }
})

/** Place and speed, by turns moved on and read; only the place is read. */
function placeAndSpeed(mean: readonly [number, number], cov: readonly [number, number, number]): Belief {
  const belief = newBelief(2)
  belief.mean.set(mean)
  belief.cov.set([cov[0], cov[1], cov[1], cov[2]])
  return belief
}

function glide(belief: Belief, dt: number, push = 0): void {
  spread(belief, 2, Float64Array.of(1, dt, 0, 1))
  belief.mean[0]! += belief.mean[1]! * dt + (push * dt ** 2) / 2
  belief.mean[1]! += push * dt
}

const upper = ({ mean, cov }: Belief) => [...mean, cov[0]!, cov[1]!, cov[3]!]
const near = (found: readonly number[], published: readonly number[], share: number) => {
  for (const [i, value] of published.entries()) {
    expect(Math.abs(found[i]! - value)).toBeLessThan(share * Math.max(1, Math.abs(value)))
  }
}

const velocity = rowsOf('constant-velocity.txt', ' ').map((row) => row.map(Number))
/** ∫ of white noise of density 0.1 over a step: [[dt³/3, dt²/2], [dt²/2, dt]] = dt (dt/2, 1)(dt/2, 1)ᵀ + dt³/12 of the place alone. */
function whiteNoise(belief: Belief, dt: number): void {
  shake(belief, 2, Float64Array.of(dt / 2, 1), 0.1 * dt)
  blur(belief, 0, (0.1 * dt ** 3) / 12)
}

test('constant velocity: at the last of fifty readings the filter stands where the smoother begins', () => {
  const belief = placeAndSpeed([0, -0.5], [0.01, 0, 0.25])
  const place = Float64Array.of(1, 0)
  expect(velocity).toHaveLength(51)
  for (const [at, read] of velocity.slice(1)) {
    glide(belief, 0.1)
    whiteNoise(belief, 0.1)
    learn(belief, place, read! - belief.mean[0]!, 1e-3)
    expect(at).toBeGreaterThan(0)
  }
  near(upper(belief), velocity.at(-1)!.slice(2), 1e-12)
})

test('constant velocity looked back at: place, speed and covariances of all fifty readings and of the start', () => {
  const belief = placeAndSpeed([0, -0.5], [0.01, 0, 0.25])
  belief.tape = newTape()
  stopHere(belief, 0)
  for (const [i, [, read]] of velocity.slice(1).entries()) {
    glide(belief, 0.1)
    whiteNoise(belief, 0.1)
    learn(belief, Float64Array.of(1, 0), read! - belief.mean[0]!, 1e-3)
    stopHere(belief, i + 1)
  }
  const back = smooth(belief)
  expect(back).toHaveLength(51)
  for (const [i, { mean, cov }] of back.entries()) {
    near([...mean, cov[0]!, cov[1]!, cov[3]!], velocity[i]!.slice(2), 1e-12)
  }
})

test('constant acceleration: nothing is learnt from a wild reading, and all of the others', () => {
  const steps = [
    [5.034086319289255, 0.06067828692568, 0.064708483037606, 1.195535014370764, 1.086868875734919, 0.9884442249931407],
    [
      -3.337061355932284, 0.019886672320027, 0.034904032462201, 1.402834779444512, 1.169099419135149,
      0.9749818238909922,
    ],
    [-8.801578273003292, -0.1190721806704, -0.065070117956703, 1.619738025866476, 1.246101714590042, 0.959598480241099],
    [
      -8.861162782213471, -0.286165267351454, -0.170153578598288, 1.843916364015026, 1.31733470106268,
      0.9423187741002188,
    ],
    [
      -10.121538280908347, -0.506218436063695, -0.295882143005337, 2.072927605120294, 1.382325410617369,
      0.9232060541331263,
    ],
    [
      2.229170160657378, -0.471605461158183, -0.246054722741182, 2.304276489210423, 1.44068563372891,
      0.9023607526946897,
    ],
    [
      -1.175970441402168, -0.512958772415475, -0.246205044917225, 2.535479295930319, 1.492124998933963,
      0.8799171887356181,
    ],
    [1e10, -0.537079276907198, -0.236205044917225, 2.842704467604468, 1.580136717807525, 0.880317188735618],
    [1.320145039358675, -0.502467861919172, -0.19580042725265, 3.0702836438525, 1.616970319961028, 0.853743076833463],
    [
      2.296944111193132, -0.428811797228904, -0.139398122831747, 3.290273908687114, 1.646352168470273,
      0.8261161598709689,
    ],
  ] as const
  const belief = placeAndSpeed([0, 0], [1, 1, 1])
  const dt = 0.1
  for (const [read, ...published] of steps) {
    glide(belief, dt, 0.1)
    shake(belief, 2, Float64Array.of(dt ** 2 / 2, dt), 0.04)
    if (read < 1e6) learn(belief, Float64Array.of(1, 0), read - belief.mean[0]!, 100)
    near(upper(belief), published, 1e-12)
  }
})

test('three readings of a mixture of two states: the unscented filter of a linear model is this filter', () => {
  const belief = placeAndSpeed([1, 1], [1, 0.1, 1])
  const published = [
    [2.35637583900053, 0.92953020131845, 2.09738255033564, 1.51577181208054, 2.91778523489934],
    [4.39153258583784, 1.15148930114305, 3.62532578216913, 3.14443733560803, 4.65898912348045],
    [6.71906243764755, 1.52810614201467, 4.3902465859811, 3.90194406652627, 5.40957304471697],
  ]
  for (const [i, read] of [1, 2, 3].entries()) {
    glide(belief, 1)
    blur(belief, 0, 2)
    blur(belief, 1, 2)
    learn(belief, Float64Array.of(0.5, -0.3), read - (0.5 * belief.mean[0]! - 0.3 * belief.mean[1]!), 0.5)
    // Their sigma points are spread by 1e-3: what is left of a double's digits after that.
    near(upper(belief), published[i]!, 1e-9)
  }
})

test('radar: a reading that is not linear is taken in by its slope, close to what an unscented filter finds', () => {
  // Slant ranges at 0.05 … 1.00 s.
  const ranges = [
    1019.28514031432, 1003.64456445668, 1004.37512895945, 1002.2116390787, 1012.84494958749, 1017.2857822716,
    1000.98068269482, 989.495758433222, 988.682489311085, 999.449261862653, 995.453275377045, 992.137281247046,
    1010.37829568493, 1003.19011223179, 1001.86346641463, 969.84940231456, 1020.94678737604, 1006.64605899924,
    1015.44986480935, 995.421981712377,
  ]
  const belief = newBelief(3)
  belief.mean.set([0, 90, 1100])
  for (let i = 0; i < 3; i++) blur(belief, i, 100)
  const course = ranges.map((range) => {
    spread(belief, 3, Float64Array.of(1, 0.05, 0, 0, 1, 0, 0, 0, 1))
    belief.mean[0]! += 0.05 * belief.mean[1]!
    for (let i = 0; i < 3; i++) blur(belief, i, 0.01)
    const expected = Math.hypot(belief.mean[0]!, belief.mean[2]!)
    learn(belief, Float64Array.of(belief.mean[0]! / expected, 0, belief.mean[2]! / expected), range - expected, 10)
    return [...belief.mean]
  })
  const extended = [
    [0, [4.19903587, 89.98499082, 1026.61443688]],
    [19, [61.18961052, 78.10721734, 1002.40186329]],
  ] as const
  for (const [i, mean] of extended) for (const [j, value] of mean.entries()) expect(course[i]![j]).toBeCloseTo(value, 8)
  // Both are approximations; they differ by less than a tenth of an sd, which is 13 m in the place and 0.85 m in the height.
  const unscented = [61.1530913692459, 78.0822227757497, 1002.3390363381]
  const apart = course[19]!.map((value, j) => Math.abs(value - unscented[j]!))
  expect(apart[0]).toBeLessThan(0.1 * Math.sqrt(178.4))
  expect(apart[1]).toBeLessThan(0.1 * Math.sqrt(93.9))
  expect(apart[2]).toBeLessThan(0.1 * Math.sqrt(0.731))
})
