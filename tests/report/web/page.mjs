// SPDX-License-Identifier: GPL-3.0-or-later
// usage: node page.mjs DEMO MANY FOREIGN   three reports; says what is wrong with them, and ends with 1 if anything is.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import axe from 'axe-core';
import { chromium } from 'playwright-core';

const [demo, many, foreign] = process.argv.slice(2);
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
const problems = [];
const check = async (what, body) => { try { await body(); } catch (error) { problems.push(`${what}: ${error.message}`); } };

// Success criteria of WCAG 2.2, levels A and AA, as far as a program can judge them. Of what repeats – small pages, lines of
// the long table – the first ones are judged, so that forty alike do not cost forty times.
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const judged = { include: [['html']], exclude: [['.wall li:nth-child(n+3)'], ['.wall:nth-of-type(n+4)'], ['tbody tr:nth-child(n+9)']] };
const accessible = async page => {
  await page.evaluate(axe.source);
  const { violations, passes } = await page.evaluate(([where, values]) => axe.run(where, { runOnly: values, resultTypes: ['violations'] }), [judged, tags]);
  assert.ok(passes.length > 10, 'hardly anything was judged');
  assert.deepEqual(violations.map(v => `${v.id}: ${v.nodes[0].html.slice(0, 160)}`), []);
};

// SC 1.4.10: no scrolling in two directions at 320 px; SC 1.3.1 and 2.4.6: one h1, no level left out.
const fits = async (page, width) => {
  await page.setViewportSize({ width, height: 800 });
  const seen = await page.evaluate(() => ({
    wide: document.documentElement.scrollWidth,
    beyond: [...document.querySelectorAll('main *')].filter(e => !e.closest('.wide, svg, .aside') && e.getBoundingClientRect().right > innerWidth + 1).map(e => e.outerHTML.slice(0, 120)),
  }));
  assert.ok(seen.wide <= width, `${seen.wide} px wide in ${width}`);
  assert.deepEqual(seen.beyond, []);
};
const headed = async page => {
  const levels = await page.$$eval('h1, h2, h3, h4', all => all.map(h => +h.tagName[1]));
  assert.equal(levels.filter(level => level === 1).length, 1);
  levels.forEach((level, i) => assert.ok(i === 0 ? level === 1 : level <= levels[i - 1] + 1, `h${level} after h${levels[i - 1]}`));
};

// SC 2.4.3 and 2.4.7: the keyboard goes through the page as it is written, begins with the way past the head, and is seen.
const keyboard = async page => {
  await page.evaluate(() => {
    globalThis.inOrder = [...document.querySelectorAll('a[href], summary, [tabindex="0"]')].filter(e => !e.parentElement.closest('details:not([open]) > :not(summary)'));
  });
  for (let i = 0; i < 25; ++i) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => ({ index: inOrder.indexOf(document.activeElement), all: inOrder.length, outline: parseFloat(getComputedStyle(document.activeElement).outlineWidth) }));
    if (i >= at.all) break;
    assert.equal(at.index, i, `stop ${i} of the keyboard`);
    assert.ok(at.outline >= 2, `stop ${i} is not seen`);
  }
  assert.equal(await page.evaluate(() => inOrder[0].className), 'skip');
};

// Every link leads to something; nothing is asked of anybody else.
const standsAlone = async (page, requests) => {
  const lost = await page.$$eval('a, use', all => all.map(a => a.getAttribute('href')).filter(to => !to.startsWith('#') || !document.getElementById(to.slice(1))));
  assert.deepEqual(lost, []);
  assert.deepEqual(requests.filter(url => !url.startsWith('file:') && !url.startsWith('data:')), []);
  assert.equal(requests.filter(url => url.startsWith('file:')).length, 1);
  assert.equal(await page.$$eval('script, link, iframe, object, img', all => all.length), 0);
};

// Without pictures the words tell all: each picture with lines says whose it is, and its caption says the same in sight.
const words = async page => {
  const lacking = await page.$$eval('figure', all => all.filter(f => !f.querySelector('svg').getAttribute('aria-label').startsWith(f.querySelector('figcaption').textContent.split('.')[0].split(', as a')[0])).length);
  assert.equal(lacking, 0);
  const told = await page.$$eval('article', all => all.map(a => [a.querySelector('h4').innerText.length, a.innerText.includes('Rule ')]));
  told.forEach(([length, rule]) => assert.ok(length > 12 && rule));
  const before = await page.evaluate(() => document.body.innerText);
  await page.evaluate(() => document.querySelectorAll('svg').forEach(svg => svg.remove()));
  assert.equal((await page.evaluate(() => document.body.innerText)).replace(/\s+/g, ' '), before.replace(/\s+/g, ' '));
  assert.ok((await page.$$eval('a', all => all.every(a => a.textContent.trim().length > 0))));
};

const printed = async (page, name, fewest, most) => {
  const file = fileURLToPath(new URL(`${name}.pdf`, import.meta.url));
  writeFileSync(file, await page.pdf({ format: 'A4', preferCSSPageSize: true }));
  const pages = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 26 }).split('\f').slice(0, -1);
  assert.ok(pages.length >= fewest && pages.length <= most, `${pages.length} printed pages, expected ${fewest} to ${most}`);
  pages.forEach((text, i) => assert.ok(text.trim().length > 0, `printed page ${i + 1} is empty`));
  assert.match(pages[0], /fit for sale/i);
  const heads = await page.$$eval('h2, h3', all => all.map(h => h.textContent));
  pages.slice(0, -1).forEach((text, i) => assert.ok(!heads.includes(text.trim().split('\n').at(-1).trim()), `a heading ends printed page ${i + 1}`));
  // What is folded away on a screen is printed.
  for (const dd of await page.$$eval('details dd', all => all.slice(0, 3).map(d => d.textContent.split(' ').slice(0, 4).join(' '))))
    assert.ok(pages.join(' ').replace(/\s+/g, ' ').includes(dd), `"${dd}" is not printed`);
};

for (const [name, file, fewest, most] of [['demo', demo, 4, 40], ['many', many, 4, 30], ['foreign', foreign, 1, 4]]) {
  const context = await browser.newContext({ offline: true, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const requests = [];
  page.on('request', request => requests.push(request.url()));
  await page.goto(pathToFileURL(file).href);
  await check(`${name}, alone`, () => standsAlone(page, requests));
  await check(`${name}, headings`, () => headed(page));
  await check(`${name}, keyboard`, () => keyboard(page));
  for (const width of [360, 1280]) {
    await check(`${name}, ${width} px`, () => fits(page, width));
    await check(`${name}, accessible at ${width} px`, () => accessible(page));
  }
  await check(`${name}, 320 px`, () => fits(page, 320));
  await check(`${name}, printed`, () => printed(page, name, fewest, most));
  if (name === 'many')
    await check('each level is tried', async () => assert.deepEqual(await page.$$eval('article', all => [...new Set(all.map(a => a.className.split(' ')[1]))].sort()), ['error', 'note', 'warning']));
  await check(`${name}, words`, () => words(page));
  await context.close();
}
await browser.close();
problems.forEach(problem => console.error(problem));
console.log(problems.length ? `${problems.length} problems` : 'three reports, no problem');
process.exit(problems.length ? 1 : 0);
