import type { Page } from 'playwright-core'

/**
 * A stop of the round written down: level, looks, refractometer as it is expected to be, and what is to be poured.
 *
 * @param pauseMs between the last thing typed and writing it down
 */
export async function walkStop(page: Page, pauseMs = 0): Promise<void> {
  const before = page.url()
  await page.locator('label').filter({ hasText: 'at the mark' }).click()
  await page.getByRole('button', { name: 'On to look, smell, oil' }).click()
  for (const sense of ['Look', 'Smell', 'Oil']) {
    await page.getByRole('group', { name: sense }).locator('label').nth(1).click()
  }
  // The third look leads on by itself. Where tests are due they come first; a step that is shown stays until somebody taps.
  await page.locator('.step-brix, .step-tests').waitFor()
  if (await page.locator('.step-tests').isVisible()) {
    await page.getByRole('button', { name: 'On to the refractometer' }).click()
  }
  for (const key of '4.1') await page.getByRole('button', { name: key, exact: true }).click()
  const yes = page.locator('.fault button')
  while ((await yes.count()) > 0) await yes.first().click()
  if (pauseMs > 0) await page.waitForTimeout(pauseMs)
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
