import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Found, infer, mostPresent, type NoisyOr } from './noisy-or.ts'

/** The full joint, one configuration of causes after the other: what the chain must come to. */
function byEnumeration({ priors, leaks, links }: NoisyOr, { present, absent }: Found) {
  let evidence = 0
  const joint = priors.map(() => 0)
  for (let set = 0; set < 2 ** priors.length; set += 1) {
    const isThere = (cause: number) => Math.floor(set / 2 ** cause) % 2 === 1
    let weight = priors.reduce((product, prior, cause) => product * (isThere(cause) ? prior : 1 - prior), 1)
    const silence = (finding: number) =>
      links.reduce(
        (left, of, cause) =>
          of.reduce((l, link) => (link.finding === finding && isThere(cause) ? l * (1 - link.strength) : l), left),
        1 - leaks[finding]!,
      )
    for (const finding of absent) weight *= silence(finding)
    for (const finding of present) weight *= 1 - silence(finding)
    evidence += weight
    for (const cause of priors.keys()) if (isThere(cause)) joint[cause]! += weight
  }
  return { evidence, joint }
}

const probability = fc.double({ min: 0.001, max: 0.999, noNaN: true })

/** A network of up to six causes and seven findings, and what was found of it. */
const cases = fc.integer({ min: 1, max: 6 }).chain((causes) =>
  fc.record({
    priors: fc.array(probability, { minLength: causes, maxLength: causes }),
    leaks: fc.array(probability, { minLength: 7, maxLength: 7 }),
    strengths: fc.array(fc.array(fc.option(probability), { minLength: 7, maxLength: 7 }), {
      minLength: causes,
      maxLength: causes,
    }),
    found: fc.array(fc.constantFrom('present', 'absent', 'unknown'), { minLength: 7, maxLength: 7 }),
  }),
)

const networkOf = ({
  priors,
  leaks,
  strengths,
}: {
  priors: number[]
  leaks: number[]
  strengths: (number | null)[][]
}) => ({
  priors,
  leaks,
  links: strengths.map((of) => of.flatMap((strength, finding) => (strength === null ? [] : [{ finding, strength }]))),
})
const foundOf = (found: readonly string[]): Found => ({
  present: found.flatMap((state, finding) => (state === 'present' ? [finding] : [])),
  absent: found.flatMap((state, finding) => (state === 'absent' ? [finding] : [])),
})

test('the chain comes to the full joint', () => {
  fc.assert(
    fc.property(cases, ({ found, ...of }) => {
      const [network, seen] = [networkOf(of), foundOf(found)]
      const expected = byEnumeration(network, seen)
      const { evidence, joint } = infer(network, seen)
      expect(evidence / expected.evidence).toBeCloseTo(1, 9)
      for (const [cause, value] of expected.joint.entries()) expect(joint[cause]! / value).toBeCloseTo(1, 9)
    }),
  )
})

test('with nothing found every cause keeps its prior', () => {
  const { evidence, joint } = infer({ priors: [0.1, 0.3], leaks: [0.05], links: [[], []] }, { present: [], absent: [] })
  expect(evidence).toBeCloseTo(1, 12)
  expect(joint[0]).toBeCloseTo(0.1, 12)
  expect(joint[1]).toBeCloseTo(0.3, 12)
})

test('a stronger link to what is there never lowers its cause', () => {
  fc.assert(
    fc.property(cases, fc.double({ min: 0, max: 1, noNaN: true }), ({ found, ...of }, share) => {
      const seen = foundOf(found)
      fc.pre(seen.present.length > 0)
      const link = seen.present[0]!
      const weaker = networkOf(of)
      const before = of.strengths[0]![link] ?? 0
      const strengths = of.strengths.map((row, n) => (n === 0 ? row.with(link, before + share * (1 - before)) : row))
      const stronger = networkOf({ ...of, strengths })
      const of0 = (network: NoisyOr) => infer(network, seen).joint[0]! / infer(network, seen).evidence
      expect(of0(stronger)).toBeGreaterThanOrEqual(of0(weaker) - 1e-12)
    }),
  )
})

test('what only one cause makes never lowers that cause', () => {
  fc.assert(
    fc.property(cases, probability, ({ found, ...of }, strength) => {
      const seen = foundOf(found)
      const network = networkOf({ ...of, leaks: [...of.leaks, 0.05] })
      const own = { ...network, links: network.links.map((l, n) => (n === 0 ? [...l, { finding: 7, strength }] : l)) }
      const before = infer(own, seen)
      const after = infer(own, { ...seen, present: [...seen.present, 7] })
      expect(after.joint[0]! / after.evidence).toBeGreaterThanOrEqual(before.joint[0]! / before.evidence - 1e-12)
    }),
  )
})

test('a cause that explains what is there makes another less needed', () => {
  const network = {
    priors: [0.1, 0.1],
    leaks: [0.01, 0.01],
    links: [
      [{ finding: 0, strength: 0.9 }],
      [
        { finding: 0, strength: 0.9 },
        { finding: 1, strength: 0.9 },
      ],
    ],
  }
  const one = infer(network, { present: [0], absent: [] })
  const both = infer(network, { present: [0, 1], absent: [] })
  expect(both.joint[0]! / both.evidence).toBeLessThan(one.joint[0]! / one.evidence)
})

test('more findings at once than can be weighed are refused', () => {
  const many = Array.from({ length: mostPresent + 1 }, (_, n) => n)
  const network = { priors: [0.1], leaks: many.map(() => 0.1), links: [[]] }
  expect(() => infer(network, { present: many, absent: [] })).toThrow('present has 13, expected at most 12')
})
