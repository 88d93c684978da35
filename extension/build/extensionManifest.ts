import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { allCodes, rowOf } from '../../core/diagnostics/pages.ts';

export type ExtensionManifest = { readonly [key: string]: unknown } & {
  readonly name: string;
  readonly displayName: string;
  readonly description: string;
  readonly version: string;
  readonly publisher: string;
  readonly icon: string;
  readonly license: string;
  readonly engines: { readonly vscode: string };
  readonly categories: readonly string[];
  readonly keywords: readonly string[];
  readonly contributes: Contributions;
};

type Contributions = { readonly [key: string]: unknown } & {
  readonly configuration: { readonly properties: Readonly<Record<string, object>> };
};

/** What the extension's manifest takes over from the repository's; the rest is about building and publishing to npm. */
const kept = [
  'name',
  'displayName',
  'description',
  'version',
  'license',
  'publisher',
  'icon',
  'categories',
  'keywords',
  'main',
  'browser',
  'l10n',
  'activationEvents',
  'capabilities',
  'contributes',
];

/** The manifest inside the archive: it depends on nothing, since the bundles hold all they need. */
export async function extensionManifest(root: string): Promise<ExtensionManifest> {
  const own = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as ExtensionManifest;
  const taken = Object.entries(own).filter(([key]) => kept.includes(key));
  return {
    ...Object.fromEntries(taken),
    contributes: withCodes(own.contributes),
    engines: { vscode: own.engines.vscode },
  } as ExtensionManifest;
}

const severitySetting = 'diag.severity';

/** The setting that weighs findings knows every code, so that an editor can complete it and says when there is none such. */
function withCodes(contributes: Contributions): Contributions {
  const { configuration } = contributes;
  const setting = configuration.properties[severitySetting];
  if (setting === undefined) throw new Error(`The manifest has no setting ${severitySetting}.`);
  const { propertyNames: _, additionalProperties: severity, ...rest } = setting as SeveritySetting;
  const codes = allCodes().map((code) => {
    const { title, severity: own } = rowOf(code);
    return [code, { ...severity, description: `${title}. Left alone: ${own}.` }];
  });
  const chosen = { ...rest, properties: Object.fromEntries(codes), additionalProperties: false };
  const properties = { ...configuration.properties, [severitySetting]: chosen };
  return { ...contributes, configuration: { ...configuration, properties } };
}

interface SeveritySetting {
  readonly propertyNames: object;
  readonly additionalProperties: object;
}
