import { chartTests } from './chartTests.ts';
import type { WindowTest } from './runInWindow.ts';

const text = `diag: 1
case: Trim
---
note: |
  # What was measured
---
readings: At idle
as: idle
values:
  map: 13.1 inHg
  rpm: 780 rpm
---
check: Is it low?
expect:
  - idle.map < 15 inHg
---
check: Is it slow?
expect:
  - idle.rpm < 700 rpm
`;

export const windowTests: readonly WindowTest[] = [
  ...chartTests,
  {
    name: 'the outline shows the titles of cells',
    files: { 'case.diag': text },
    run: async (window) => {
      await window.openNotebook('case.diag');
      await window.command('Explorer: Focus on Outline View');
      const rows = window.page.locator('.outline-tree .monaco-list-row .monaco-icon-label');
      for (const title of ['What was measured', 'readings: At idle', 'check: Is it low?'])
        await window.sees(`"${title}" in the outline`, rows.filter({ hasText: title }).first());
    },
  },
  {
    name: 'the walkthrough opens, and what its steps offer works',
    files: { 'wrong.diag': text.replace('13.1 inHg', '13,1 inHg') },
    run: async (window) => {
      const { page } = window;
      const offer = async (step: string, title: string): Promise<void> => {
        await window.command('Welcome: Open Walkthrough');
        await window.choice('Your First Diagnostic Case').click();
        await page.locator('.getting-started-step').filter({ hasText: step }).click();
        const button = page.locator('.getting-started-step.expanded').getByText(title, { exact: true });
        await window.sees(`the offer "${title}"`, button);
        await button.click();
      };
      await offer('Write down what you measured', 'Insert a cell');
      await window.sees('that a case is needed', window.message('A cell stands in a case'));
      await offer('Begin a case', 'New case');
      await window.choice('Compression test').click();
      await window.sees('the new case', window.cellLine('case: Compression test'));
      await offer('Write down what you measured', 'Insert a cell');
      await window.choice('caution').click();
      await window.sees('the new cell', window.cellLine('caution: What can hurt'));
      await offer('Check all cases and keep them', 'Check all cases');
      await window.sees('the sum', window.message('Cases checked: 1 of 1. Errors: 1.'));
    },
  },
  {
    name: 'offers come by themselves, and what is written in full goes on to the next line at Enter',
    files: { 'case.diag': text.replace('case: Trim\n', 'case: Trim\nengine:\n  fuel: E10\n') },
    run: async (window) => {
      const { page } = window;
      const offered = (words: string) =>
        page.locator('.suggest-widget.visible .monaco-list-row').filter({ hasText: words }).first();
      await window.openNotebook('case.diag');
      await window.sees('the results', page.locator('.cell-status-item').filter({ hasText: 'fails' }));
      await window.cellLine('fuel: E10').click();
      await window.press('End', 'Enter');
      await page.keyboard.type('displ', { delay: 30 });
      await window.sees('a key that is begun', offered('displacement'));
      await window.press('Enter');
      await page.keyboard.type('2.4 L', { delay: 30 });
      await window.sees('the key and its value', window.cellLine('displacement: 2.4 L'));
      await window.cellLine('as: idle').click();
      await window.press('End', 'Enter');
      await page.keyboard.type('state: warm idle', { delay: 30 });
      await window.sees('the state that is written already', offered('warm idle'));
      await window.press('Enter');
      await page.keyboard.type('tool: gauge', { delay: 30 });
      await window.press('Escape', 'Escape', 'ControlOrMeta+s');
      const wanted = text
        .replace('case: Trim\n', 'case: Trim\nengine:\n  fuel: E10\n  displacement: 2.4 L\n')
        .replace('as: idle\n', 'as: idle\nstate: warm idle\ntool: gauge\n');
      await window.comesTo('the file', () => window.read('case.diag'), wanted);
    },
  },
  {
    name: 'a warning comes when both views of a case have changes',
    files: { 'case.diag': text },
    run: async (window) => {
      const { page } = window;
      await window.openNotebook('case.diag');
      await window.cellLine('readings: At idle').click();
      await window.press('End');
      await page.keyboard.type(', warm');
      await window.press('Escape');
      await page.locator('.explorer-folders-view').getByText('case.diag').click({ button: 'right' });
      await page.getByText('Open With...').click();
      await window.choice('Text Editor').click();
      await window.textLine('check: Is it low').click();
      await window.press('End');
      await page.keyboard.type(' Enough?');
      const warning = window.message('case.diag is open as text and as a notebook, and both have changes.');
      await window.sees('the warning', warning);
      await warning.getByText('Show the Notebook').click();
      await window.sees('the notebook', window.cellLine('readings: At idle, warm'));
    },
  },
  {
    name: 'the findings of a case are told once, in whichever view it is open, and go when it is closed',
    files: { 'case.diag': text.replace('13.1 inHg', '13,1 inHg') },
    run: async (window) => {
      const { page } = window;
      const count = () => page.locator('#status\\.problems').getAttribute('aria-label');
      await window.openNotebook('case.diag');
      await window.comesTo('the count of a notebook', count, 'Errors: 1');
      await window.command('Diagnostic Casebook: Open as Text');
      await window.sees('the text', window.textLine('diag: 1'));
      await window.comesTo('the count of a text', count, 'Errors: 1');
      await window.command('Diagnostic Casebook: Open as Notebook');
      await window.sees('the notebook', window.cellLine('diag: 1'));
      await window.comesTo('the count of a notebook again', count, 'Errors: 1');
      await window.press('ControlOrMeta+k', 'ControlOrMeta+w');
      await window.comesTo('the count when nothing is open', count, 'No Problems');
    },
  },
  {
    name: 'a file with the marks of a merge opens as text, with the reason',
    files: {
      'case.diag': text.replace('case: Trim', '<<<<<<< ours\ncase: A\n=======\ncase: B\n>>>>>>> theirs'),
    },
    run: async (window) => {
      const { page } = window;
      await window.openFile('case.diag');
      const dialog = page.locator('.monaco-dialog-box');
      const reason = 'This file holds the marks of a merge that was not finished (line 2).';
      await window.sees('the reason', dialog.getByText(reason));
      await window.press('Enter');
      await window.sees('the text', window.textLine('<<<<<<< ours'));
      await window.sees('a squiggle under the marks', page.locator('.squiggly-error').first());
    },
  },
  {
    name: 'a line `---` that is typed into a cell is told, and the offer splits the cell',
    files: { 'case.diag': text },
    run: async (window) => {
      const { page } = window;
      await window.openNotebook('case.diag');
      await window.cellLine('rpm: 780 rpm').click();
      await window.press('End', 'Enter', 'Shift+Home');
      await page.keyboard.type('---\ncheck: Typed');
      await window.sees('a squiggle', page.locator('.notebook-editor .squiggly-warning').first());
      await window.press('ArrowUp', 'Home');
      await window.takeOffer('Split the cell here');
      await window.comesTo(
        'the number of cells',
        () => page.locator('.notebook-editor .code-cell-row').count(),
        5,
      );
      await window.press('ControlOrMeta+s');
      const wanted = text.replace('rpm: 780 rpm', 'rpm: 780 rpm\n---\ncheck: Typed');
      await window.comesTo('the file', () => window.read('case.diag'), wanted);
    },
  },
  {
    name: 'a finding is put right by its offer',
    files: { 'case.diag': text.replace('13.1 inHg', '13,1 inHg').replace('idle.map <', 'idle.mpa <') },
    run: async (window) => {
      await window.openNotebook('case.diag');
      const fix = async (line: string, word: string, title: string): Promise<void> => {
        await window.cellLine(line).click();
        await window.press('Home');
        const at = line.indexOf(word) + 1;
        for (let n = 0; n < at; n++) await window.press('ArrowRight');
        await window.takeOffer(title);
      };
      await fix('map: 13,1 inHg', '13,1', 'Write 13.1');
      await window.sees('the number with its point', window.cellLine('map: 13.1 inHg'));
      await fix('- idle.mpa < 15 inHg', 'mpa', 'map');
      await window.sees('the name', window.cellLine('- idle.map < 15 inHg'));
      await window.press('ControlOrMeta+s');
      await window.comesTo('the file', () => window.read('case.diag'), text);
    },
  },
  {
    name: 'the status of a cell is in words, and leads to what fails',
    files: { 'case.diag': text },
    run: async (window) => {
      const { page } = window;
      await window.openNotebook('case.diag');
      const status = page.locator('.notebook-editor .cell-status-item').filter({ hasText: 'fails' });
      await window.sees('the status', status);
      await window.comesTo(
        'what is heard',
        () => status.getAttribute('aria-label'),
        'idle.rpm < 700 rpm: 780 rpm, 80 rpm above the limit of 700 rpm: fails.',
      );
      await status.click();
      const failing = page.locator('.notebook-editor .code-cell-row.focused');
      await window.sees('the cell', failing.filter({ hasText: /check:[ \u00a0]Is[ \u00a0]it[ \u00a0]slow/ }));
      await window.sees('the place in it', failing.locator('.selected-text'));
    },
  },
  {
    name: 'a new case is begun from a template, and a cell of a chosen kind is put in',
    files: {},
    run: async (window) => {
      const { page } = window;
      await window.command('Diagnostic Casebook: New Case');
      await window.choice('Trims at several loads').click();
      await window.sees('the header', window.cellLine('diag: 1'));
      await window.command('Diagnostic Casebook: Insert Cell');
      await window.choice('suspects').click();
      await window.sees('the cell', window.cellLine('suspects: What could it be?'));
      await window.sees('its focus', page.locator('.notebook-editor .monaco-editor.focused'));
      await window.command('Diagnostic Casebook: Insert a Repair');
      await window.sees('the other cell', window.cellLine('repair: What was done'));
    },
  },
  {
    name: 'cases that are not open are checked with a count that can be stopped',
    files: Object.fromEntries(
      Array.from({ length: 400 }, (_, at) => [`case-${at}.diag`, text.replace('13.1 inHg', '101 inHg')]),
    ),
    run: async (window) => {
      const { page } = window;
      await window.command('Diagnostic Casebook: Check All Cases of the Workspace');
      const progress = window.message('Checking cases');
      await window.sees('the progress', progress);
      await progress.getByText('Cancel', { exact: true }).click();
      await window.sees('how far it came', window.message(/Cases checked: \d+ of 400\. Errors: [1-9]/));
      const said = (await window.message('Cases checked').textContent())?.match(/checked: (\d+) of/)?.[1];
      await window.comesTo('that it was stopped', () => Number(said) > 0 && Number(said) < 400, true);
      await window.message('Cases checked').getByText('Show Problems').click();
      const problems = page.locator('.markers-panel .monaco-list-row');
      await window.sees(
        'a problem of a file that is not open',
        problems.filter({ hasText: '`map` cannot be 101 inHg' }).first(),
      );
    },
  },
];
