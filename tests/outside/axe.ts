import axe, { type AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What the rules of accessible pages find wrong with a page as it is now, one line for each rule and place. */
export async function axeViolations(page: Page): Promise<readonly string[]> {
  // half a megabyte of rules, which stay in a page
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  // loaded again beforehand, style sheets and films would serve a rule about sounds that start by themselves alone
  expect(await page.locator('audio, video').count()).toBe(0);
  const { violations }: AxeResults = await page.evaluate(
    "axe.run({ resultTypes: ['violations'], preload: false })",
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary}`),
  );
}
