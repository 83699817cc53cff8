import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** A stop of the round written down: level, looks, refractometer as it is expected to be, and what is to be poured. */
export async function walkStop(page: Page): Promise<void> {
  const before = page.url()
  const press = async (text: string) => {
    for (const waited of text) {
      const key = page.getByRole('button', { name: waited, exact: true })
      const on = page.getByRole('button', { name: 'On to the refractometer' })
      // Tests that turn out to be due come first, also where that is found late.
      await key.or(on).first().waitFor()
      if (await on.isVisible()) await on.click()
      await key.click()
    }
  }
  await page.locator('label').filter({ hasText: 'at the mark' }).click()
  const on = page.getByRole('button', { name: 'On to look, smell, oil' })
  await on.click()
  for (const sense of ['Look', 'Smell', 'Oil']) {
    const tap = page.getByRole('group', { name: sense }).locator('label').nth(1)
    await tap.click()
    await expect
      .poll(
        async () => (await tap.locator(':checked').count()) + (await page.locator('.step-brix, .step-tests').count()),
      )
      .toBe(1)
  }
  await page.locator('.step-brix, .step-tests').first().waitFor()
  await press('4.1')
  for (const yes of await page.locator('.fault button').all()) await yes.click()
  await page.locator('.stop-buttons button:enabled').first().click()
  await page.waitForURL((url) => url.toString() !== before)
}

/** To the next stop of the round, or of another one. */
export async function goOnRound(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/round`)
  const another = page.getByRole('button', { name: 'Begin another round' })
  const next = page.getByRole('link', { name: /^(Begin|Go on) with/ })
  await another.or(next).waitFor()
  if (await another.isVisible()) await another.click()
  await next.click()
  await page.getByRole('button', { name: 'On to look, smell, oil' }).waitFor()
}

/**
 * Says that the refractometer shows this, where the page asks whether to read again. What is expected in the example shop is not the same every
 * day, since its records end on the day of the test.
 */
export async function confirmWhereAsked(page: Page, brix: string): Promise<void> {
  const asked = page.getByRole('button', { name: `It reads ${brix}` })
  await asked
    .or(page.getByRole('button', { name: 'Poured as written · next' }))
    .first()
    .waitFor()
  if (await asked.isVisible()) await asked.click()
}
