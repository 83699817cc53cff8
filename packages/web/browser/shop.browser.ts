/** The things of the shop, set up on a phone. */
import { expect, test } from 'vitest'
import { expectRoomForAThumb, fileBrowser, lookAt, openPage, servedExample } from './on-a-screen.ts'

const browser = fileBrowser()

test('a hose meter is set up, a count of nothing named at its field, and changed', async () => {
  const served = await servedExample()
  const page = await openPage(browser(), `${served.address}/shop`)
  const meters = page.getByRole('region', { name: 'Hose meters' })
  await meters.getByText('1 L a count · Central system').waitFor()
  await meters.getByRole('button', { name: 'Add a hose meter' }).click()
  const form = page.getByRole('form', { name: 'Add a hose meter' })
  await form.getByLabel('Name of the meter').fill('Hose, hall B')
  await form.getByLabel('Poured at one count, litres').fill('0')
  await form.getByLabel('Sump it fills').selectOption('Mill 7')
  await form.getByRole('button', { name: 'Write it down' }).click()
  await form.getByText('Found 0; expected above 0.').waitFor()
  await expectRoomForAThumb(page)
  await lookAt(page, 'shop-hose-meter')
  await form.getByLabel('Poured at one count, litres').fill('0,1')
  await form.getByRole('button', { name: 'Write it down' }).click()
  await meters.getByText('0.1 L a count · Mill 7').waitFor()

  await meters.getByRole('button', { name: 'Change Hose, hall B' }).click()
  const change = page.getByRole('form', { name: 'Hose, hall B' })
  expect(await change.getByLabel('Sump it fills').inputValue()).toBe('mill7')
  await change.getByLabel('Sump it fills').selectOption('several')
  await change.getByRole('button', { name: 'Write it down' }).click()
  await meters.getByText(/^0\.1.L a count$/).waitFor()
  const { meters: kept } = (await (await fetch(`${served.address}/api/v1/book`)).json()) as { meters: unknown[] }
  expect(kept).toHaveLength(2)
  expect(kept).toContainEqual({ id: 'hose-hall-b', name: 'Hose, hall B', litresPerCount: 0.1 })
})
