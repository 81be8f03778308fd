// Opens pages that the program made in a real browser, from the disk: no error on the console, no
// request but for files beside the page, no finding of an accessibility checker in light and dark,
// a view that is not blank and differs before and after, filters and sorting by mouse and keyboard.
// Call: node pages.mjs REPORT.html INDEX.html COMPARISON.html SCREENSHOT_FOLDER
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer from 'puppeteer-core';

const [report, index, comparison, shots] = process.argv.slice(2);
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const faults = [];
const expect = (holds, what) => {
  if (!holds) faults.push(what);
  console.log((holds ? 'ok      ' : 'FAILED  ') + what);
};

const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
});

const open = async (file, allowed) => {
  const page = await browser.newPage();
  await page.setViewport({ width: 1200, height: 900 });
  const seen = { errors: [], requests: [] };
  page.on('console', (message) => {
    if (message.type() === 'error') seen.errors.push(message.text());
  });
  page.on('pageerror', (error) => seen.errors.push(String(error)));
  page.on('request', (request) => {
    const url = request.url();
    if (!/^(data|blob):/.test(url)) seen.requests.push(url);
  });
  const url = pathToFileURL(resolve(file)).href;
  await page.goto(url, { waitUntil: 'load' });
  seen.foreign = () => seen.requests.filter((each) => each !== url && !allowed(each));
  return [page, seen];
};

const accessible = async (page, what) => {
  for (const scheme of ['light', 'dark']) {
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
    await page.evaluate(axe);
    const found = await page.evaluate(async () => (await axe.run()).violations
      .map((each) => each.id + ': ' + each.nodes[0].html.slice(0, 120)));
    expect(found.length === 0, `${what}, ${scheme}: no finding of axe ${found.join(' | ')}`);
    await page.screenshot({ path: `${shots}/${what}-${scheme}.png`, fullPage: true });
  }
};

const orange = (page) => page.evaluate(() => {
  const canvas = document.getElementById('view');
  const copy = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d');
  copy.drawImage(canvas, 0, 0);
  const { data } = copy.getImageData(0, 0, canvas.width, canvas.height);
  const colours = new Set();
  let count = 0;
  for (let at = 0; at < data.length; at += 4) {
    colours.add((data[at] << 16) | (data[at + 1] << 8) | data[at + 2]);
    count += data[at] - data[at + 2] > 60 ? 1 : 0;
  }
  return { count, colours: colours.size };
});
const drawn = (page) => page.evaluate(
  () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 100)))));

mkdirSync(shots, { recursive: true });
try {
  const [page, seen] = await open(report, () => false);
  await page.waitForFunction(() => document.documentElement.dataset.view === 'ready');
  const changed = await page.$$eval('#features tbody tr', (rows) => rows
    .filter((row) => row.dataset.outcome !== 'left').map((row) => row.cells[0].textContent));
  const all = await page.$$eval('#features tbody tr', (rows) => rows.length);
  expect(changed.length > 0 && all > changed.length, 'the report has changed features and left ones');
  await accessible(page, 'report');
  await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: 'light' }]);

  await page.select('#jump', changed[0]);
  await page.click('input[value="before"]');
  await drawn(page);
  const before = await orange(page);
  await page.click('input[value="after"]');
  await drawn(page);
  const after = await orange(page);
  expect(before.colours > 3, `the view before is not blank (${before.colours} colours)`);
  expect(before.count === 0 && after.count > 50, `the roof shows after only (${before.count}, ${after.count} dots)`);
  await (await page.$('#view')).screenshot({ path: `${shots}/view-after.png` });
  const still = await page.$eval('#view', (canvas) => canvas.toDataURL());
  await page.focus('#view');
  await page.keyboard.press('ArrowLeft');
  await drawn(page);
  expect(still !== await page.$eval('#view', (canvas) => canvas.toDataURL()), 'an arrow key turns the view');

  await page.focus('#outcome');
  await page.keyboard.type('l');
  const left = await page.$$eval('#features tbody tr', (rows) => rows.filter((row) => !row.hidden).length);
  expect(left === all - changed.length, 'the filter, by keyboard, shows the left ones');
  await page.select('#outcome', '');
  await page.focus('#features th:nth-child(3) button');
  await page.keyboard.press('Enter');
  const sizes = await page.$$eval('#features tbody tr', (rows) => rows.map((row) => Number(row.cells[2].textContent)));
  expect(sizes.every((size, k) => k === 0 || sizes[k - 1] <= size), 'a heading, by keyboard, sorts');
  const paper = await page.pdf();
  writeFileSync(`${shots}/report.pdf`, paper);
  expect(paper.length > 10_000, 'the report goes to paper');
  await page.setViewport({ width: 390, height: 800 });
  await page.screenshot({ path: `${shots}/report-narrow.png`, fullPage: true });
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide <= 390, `the report fits a narrow screen (${wide})`);
  expect(seen.errors.length === 0, `no error in the report ${seen.errors.join(' | ')}`);
  expect(seen.foreign().length === 0, `no request of the report ${seen.foreign().join(' ')}`);

  const beside = new URL('.', pathToFileURL(resolve(index))).href;
  const [list, listSeen] = await open(index, (url) => url.startsWith(beside + 'gable-catalogue/'));
  await accessible(list, 'catalogue');
  const total = await list.$eval('#count', (node) => Number(/of (\d+) models/.exec(node.textContent)[1]));
  await list.select('#outcome', 'rejected');
  const rejected = await list.$$eval('#models tbody tr', (rows) => rows.map((row) => row.cells[2].textContent));
  expect(rejected.length > 0 && rejected.length < total && rejected.every((text) => text.startsWith('rejected')),
    'the filter of the catalogue shows the rejected models');
  await list.select('#outcome', '');
  await list.type('#words', 'bracket');
  const named = await list.$$eval('#models tbody tr', (rows) => rows.length);
  expect(named === 1, 'a name is found');
  await list.waitForFunction(() => [...document.images].every((image) => image.complete && image.naturalWidth > 0));
  expect((await list.$$('img.model')).length === 2, 'a changed model has two pictures');
  await list.setViewport({ width: 390, height: 800 });
  const listWide = await list.evaluate(() => document.documentElement.scrollWidth);
  expect(listWide <= 390, `the catalogue fits a narrow screen (${listWide})`);
  await list.screenshot({ path: `${shots}/catalogue-narrow.png` });
  expect(listSeen.errors.length === 0, `no error in the catalogue ${listSeen.errors.join(' | ')}`);
  expect(listSeen.foreign().length === 0, `no request of the catalogue ${listSeen.foreign().join(' ')}`);

  await list.setViewport({ width: 1200, height: 900 });
  await Promise.all([list.waitForNavigation(), list.click('#models td.name a[aria-label]')]);
  expect((await list.title()).startsWith('Report: '), 'the catalogue leads to the report of a model');
  await accessible(list, 'catalogue-report');

  const [held, heldSeen] = await open(comparison, () => false);
  await held.waitForFunction(() => document.documentElement.dataset.view === 'ready');
  await accessible(held, 'comparison');
  await held.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: 'light' }]);
  const name = await held.$$eval('#jump option', (options) => options.at(-1).textContent);
  await held.select('#jump', name);
  await held.click('input[value="before"]');
  await drawn(held);
  const old = await orange(held);
  await held.click('input[value="after"]');
  await drawn(held);
  const now = await orange(held);
  expect(old.colours > 3 && old.count === 0 && now.count > 50,
    `the comparison marks what is new (${old.count}, ${now.count} dots)`);
  expect((await held.pdf()).length > 10_000, 'the comparison goes to paper');
  await held.setViewport({ width: 390, height: 800 });
  const heldWide = await held.evaluate(() => document.documentElement.scrollWidth);
  expect(heldWide <= 390, `the comparison fits a narrow screen (${heldWide})`);
  expect(heldSeen.errors.length === 0, `no error in the comparison ${heldSeen.errors.join(' | ')}`);
  expect(heldSeen.foreign().length === 0, `no request of the comparison ${heldSeen.foreign().join(' ')}`);
} finally {
  await browser.close();
}
if (faults.length > 0) {
  console.error(`${faults.length} faults of pages`);
  process.exit(1);
}
