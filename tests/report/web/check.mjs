// SPDX-License-Identifier: GPL-3.0-or-later
// usage: node check.mjs REPORT.html…   Opens each report in headless Chromium as people do: on a phone, on a desk, by keyboard,
// on paper, with pictures off. Prints what is wrong and ends with 1, or a line a report.
import { chromium } from 'playwright-core';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const widths = [360, 1280];
const narrowest = 320; // WCAG 2.2, 1.4.10 Reflow
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const wrong = [];

async function opened(browser, file, width, more = {}) {
  const context = await browser.newContext({ viewport: { width, height: 800 }, offline: true, ...more });
  const page = await context.newPage();
  page.on('request', (request) => {
    if (!/^(file|data):/.test(request.url())) wrong.push(`${file}: asks for ${request.url()}`);
  });
  page.on('pageerror', (error) => wrong.push(`${file}: ${error.message}`));
  await page.goto(pathToFileURL(file).href);
  return page;
}

async function judgedByAxe(page, file, width) {
  await page.evaluate(axe);
  // Closed parts are opened, so that what is in them is judged as well.
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => { one.open = true; }));
  const result = await page.evaluate((tags) => globalThis.axe.run(document, { runOnly: { type: 'tag', values: tags } }), rules);
  for (const violation of result.violations)
    wrong.push(`${file} at ${width}: ${violation.id}, ${violation.help}: ${violation.nodes.slice(0, 2).map((node) => node.html.slice(0, 160)).join(' | ')}`);
  return result.passes.length;
}

async function reflows(page, file) {
  await page.setViewportSize({ width: narrowest, height: 800 });
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  if (wide > narrowest) wrong.push(`${file}: ${wide} pixels wide where ${narrowest} are there`);
}

async function walkedByKeyboard(page, file) {
  await page.keyboard.press('Tab');
  const first = await page.evaluate(() => document.activeElement.className);
  if (first !== 'skip') wrong.push(`${file}: the first stop of the keyboard is not the way to the findings`);
  await page.keyboard.press('Enter');
  if (!page.url().endsWith('#todo')) wrong.push(`${file}: the way to the findings leads elsewhere`);
  const seen = new Set();
  for (let stop = 0; stop < 40; ++stop) {
    await page.keyboard.press('Tab');
    const where = await page.evaluate(() => {
      const at = document.activeElement;
      const outline = getComputedStyle(at).outlineStyle;
      return at === document.body ? '' : `${at.tagName}:${outline}:${at.textContent.slice(0, 40)}`;
    });
    if (!where) break;
    if (where.includes(':none:')) wrong.push(`${file}: the keyboard's place is not to be seen on ${where}`);
    seen.add(where);
  }
  return seen.size;
}

async function readWithoutPictures(browser, file) {
  const page = await opened(browser, file, 1280, { javaScriptEnabled: false });
  const text = await page.locator('body').innerText();
  if (!/Fit for sale|Not fit for sale/.test(text)) wrong.push(`${file}: no verdict in its text`);
  if (text.search(/it for sale/) > text.search(/What to do\n/)) wrong.push(`${file}: the verdict does not come first`);
  const unlabelled = await page.locator('svg[role=img]:not([aria-label])').count();
  if (unlabelled) wrong.push(`${file}: ${unlabelled} pictures say nothing`);
  await page.context().close();
}

async function printed(page, file) {
  const pdf = await page.pdf({ format: 'A4', printBackground: true });
  const pages = (pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g) ?? []).length;
  if (pages < 1 || pages > 200) wrong.push(`${file}: ${pages} pages in print`);
  return pages;
}

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
for (const file of process.argv.slice(2)) {
  let passes = 0, stops = 0, pages = 0;
  for (const width of widths) {
    const page = await opened(browser, file, width);
    if (width === widths[0]) {
      stops = await walkedByKeyboard(page, file);
    } else {
      pages = await printed(page, file);
    }
    passes += await judgedByAxe(page, file, width);
    if ((await page.locator('h1').count()) !== 1) wrong.push(`${file}: not one first heading`);
    await reflows(page, file);
    await page.context().close();
  }
  await readWithoutPictures(browser, file);
  console.log(`${file}: axe passes ${passes}, keyboard stops ${stops}, printed pages ${pages}`);
}
await browser.close();
for (const one of wrong) console.error(one);
process.exit(wrong.length ? 1 : 0);
