/** The list of all that a release runs on: whole, and without a word of the machine it was made on. */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
// @ts-expect-error a script in plain JavaScript
import { billOfMaterials, tellTales, withoutSources } from '../scripts/sbom.mjs'

const bom = billOfMaterials() as {
  bomFormat: string
  components: { name: string; version: string; hashes?: unknown[] }[]
}

test('it is CycloneDX and holds every package that a part of ours asks for at run time', () => {
  expect(bom.bomFormat).toBe('CycloneDX')
  const listed = new Set(bom.components.map(({ name, version }) => `${name} ${version}`))
  for (const part of ['fluid', 'book', 'server', 'web']) {
    const text = readFileSync(new URL(`../packages/${part}/package.json`, import.meta.url), 'utf8')
    const { dependencies } = JSON.parse(text) as { dependencies: Record<string, string> }
    const asked = Object.entries(dependencies).filter(([name]) => !name.startsWith('@sumpbook/'))
    expect(asked.map(([name, version]) => `${name} ${version}`).filter((one) => !listed.has(one))).toEqual([])
  }
  expect(bom.components.map(({ name }) => name)).not.toContain('vitest')
})

test('it says nothing of the machine it was made on', () => {
  expect(tellTales(bom)).toEqual([])
  expect(JSON.stringify(bom)).not.toContain('"distribution"')
})

test('an address that a package was fetched from is taken out, one that is left is found', () => {
  const url = 'https://our-registry/a.tgz'
  const references = [
    { type: 'distribution', url },
    { type: 'website', url: 'https://a.example' },
  ]
  const cleaned = withoutSources({ components: [{ name: 'a', externalReferences: references }] })
  expect(cleaned.components[0].externalReferences).toEqual([references[1]])
  expect(tellTales({ components: [{ purl: url }] })).toHaveLength(1)
  expect(tellTales({ a: '/home/somebody/a', b: 'http://127.0.0.1:4873/a', c: 'https://a.example' })).toHaveLength(2)
})
