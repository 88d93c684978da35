import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { kindNames } from '../../core/casefile/kinds/kinds.ts';
import { allCodes } from '../../core/diagnostics/pages.ts';
import { catalogue } from '../../core/diagnostics/rows.ts';
import { writeArchive } from '../../extension/build/writeArchive.ts';
import { writeExtension } from '../../extension/build/writeExtension.ts';
import { clientStrings, stringPattern } from '../../extension/build/writeStrings.ts';
import { templates } from '../../extension/cli/templates.ts';
import { cellTemplates, insertedKinds } from '../../extension/client/cellTemplates.ts';
import { resultMime } from '../../extension/shared/resultMime.ts';
import { defaultSettings } from '../../extension/shared/settings.ts';

const root = join(import.meta.dirname, '..', '..');
const read = (path: string) => JSON.parse(readFileSync(join(root, path), 'utf8'));
const manifest = read('package.json');
const names: Record<string, string> = read('package.nls.json');
const sources = (folder: string) =>
  readdirSync(join(root, folder))
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(join(root, folder, file), 'utf8'))
    .join('\n');

describe('the manifest says what the code does', () => {
  const client = sources('extension/client');

  it('its commands are those that are registered', () => {
    const contributed = manifest.contributes.commands.map((each: { command: string }) => each.command).sort();
    const named = [...client.matchAll(/ command\('(\w+)'/g)].map(([, name]) => `diag.${name}`);
    const registered = [...named, ...insertedKinds.map((kind) => `diag.insertCell.${kind}`)].sort();
    expect(contributed).toEqual(registered);
    expect(named.length).toBeGreaterThan(5);
  });

  it('its settings are those that are read, with the same defaults', () => {
    const { properties } = manifest.contributes.configuration;
    const defaults = Object.fromEntries(
      Object.entries(properties).map(([key, value]) => [
        key.replace(/^diag\./, ''),
        (value as { default: unknown }).default,
      ]),
    );
    expect(defaults).toEqual(defaultSettings);
  });

  it('its menus name its commands', () => {
    const contributed = manifest.contributes.commands.map((each: { command: string }) => each.command);
    const inMenus = Object.values(manifest.contributes.menus).flat() as { command: string }[];
    for (const { command } of inMenus) expect(contributed).toContain(command);
  });

  it('every name has its words, and no word is left over', () => {
    const used = [...JSON.stringify(manifest).matchAll(/%([\w.]+)%/g)].map(([, key]) => key ?? '');
    expect([...new Set(used)].sort()).toEqual(Object.keys(names).sort());
  });

  it('every message of the client can be translated', () => {
    const bundle: Record<string, string> = read('extension/l10n/bundle.l10n.json');
    expect(bundle).toEqual(Object.fromEntries(clientStrings(root).map((each) => [each, each])));
    expect(Object.keys(bundle).length).toBeGreaterThan(20);
    // No message that a person reads stands in the code without its door to translation.
    expect(client).not.toMatch(/show(?:Information|Warning|Error)Message\(\s*['"`]/);
    expect(client.match(/l10n\.t\(/g)?.length).toBe(client.match(stringPattern)?.length);
  });

  it('its renderer is for the results that the client writes', () => {
    expect(manifest.contributes.notebookRenderer[0].mimeTypes).toEqual([resultMime]);
  });

  it('a case runs nothing: it works in folders that are not trusted and on any file system', () => {
    expect(manifest.capabilities).toEqual({
      untrustedWorkspaces: { supported: true },
      virtualWorkspaces: true,
    });
    expect(manifest.activationEvents).not.toContain('*');
  });

  it('nothing reports home: no address and no reporter is in the client', () => {
    expect(client).not.toMatch(/https?:\/\/|telemetry|TelemetryLogger/i);
  });
});

describe('cells and cases to begin with', () => {
  it('there is one for each kind of cell, written as its kind asks', () => {
    expect(['diag', ...insertedKinds].sort()).toEqual([...kindNames].sort());
    for (const [kind, text] of Object.entries(cellTemplates)) {
      if (kind !== 'note') expect(text).toMatch(new RegExp(`^${kind}: `));
    }
  });

  it('a case begins with its header', () => {
    for (const { text } of templates) expect(text).toMatch(/^diag: 1\n/);
  });
});

describe('the archive', () => {
  const scratch = mkdtempSync(join(tmpdir(), 'casebook-extension-'));
  const archive = join(scratch, 'casebook.vsix');
  beforeAll(async () => {
    await writeExtension(root, join(scratch, 'extension'));
    await writeArchive(join(scratch, 'extension'), archive);
  }, 60_000);
  afterAll(() => rmSync(scratch, { recursive: true, force: true }));

  it('is smaller than 3 MB', () => {
    expect(statSync(archive).size).toBeLessThan(3e6);
  });

  it('depends on nothing: no Node binary, no tool of the build', () => {
    const packed = JSON.parse(readFileSync(join(scratch, 'extension', 'package.json'), 'utf8'));
    for (const key of [
      'dependencies',
      'devDependencies',
      'optionalDependencies',
      'scripts',
      'overrides',
      'bin',
    ]) {
      expect(packed).not.toHaveProperty(key);
    }
    expect(packed.engines).toEqual({ vscode: manifest.engines.vscode });
  });

  it('holds no compiled code, which would fit one version of Node', () => {
    const files = readdirSync(join(scratch, 'extension'), { recursive: true, encoding: 'utf8' });
    expect(files).toContain(join('dist', 'client.cjs'));
    expect(files.filter((path) => path.includes('compiled') || path.endsWith('.bin'))).toEqual([]);
  });

  it('its setting of severities offers every code, and no other', () => {
    const packed = JSON.parse(readFileSync(join(scratch, 'extension', 'package.json'), 'utf8'));
    const severity = packed.contributes.configuration.properties['diag.severity'];
    expect(Object.keys(severity.properties).sort()).toEqual(allCodes().sort());
    expect(severity.additionalProperties).toBe(false);
    expect(severity.properties['unit-slip']).toEqual({
      type: 'string',
      enum: ['error', 'warning', 'info', 'off'],
      description: `${catalogue['unit-slip'].title}. Left alone: ${catalogue['unit-slip'].severity}.`,
    });
    expect(severity.default).toEqual({});
  });

  it('holds every file that its manifest names', () => {
    const packed = readFileSync(join(scratch, 'extension', 'package.json'), 'utf8');
    const named = [...packed.matchAll(/"(?:\.\/)?((?:dist|syntaxes|extension)\/[^"]+)"/g)].map(
      ([, path]) => path ?? '',
    );
    expect(named.length).toBeGreaterThan(8);
    for (const path of named) expect(statSync(join(scratch, 'extension', path)).size).toBeGreaterThan(0);
  });

  it('is the same bytes when it is made again', async () => {
    const again = join(scratch, 'again.vsix');
    await writeArchive(join(scratch, 'extension'), again);
    expect(readFileSync(again).equals(readFileSync(archive))).toBe(true);
  });

  it('carries the licence text of every package inside', () => {
    const notices = readFileSync(join(scratch, 'extension', 'THIRD-PARTY-NOTICES.md'), 'utf8');
    for (const name of ['vscode-languageclient', 'vscode-languageserver', 'yaml', 'zod']) {
      expect(notices).toContain(`## ${name} `);
    }
  });
});
