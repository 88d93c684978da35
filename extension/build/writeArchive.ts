import { createWriteStream } from 'node:fs';
import { mkdir, readdir, readFile } from 'node:fs/promises';
import { dirname, extname, join, relative, sep } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import type { ExtensionManifest } from './extensionManifest.ts';

/**
 * Packs an extension's folder into the archive that editors install (`.vsix`): an Open Packaging Conventions zip with
 * the folder under `extension/`, a list of content types, and a manifest of its own. The same input gives the same bytes.
 */
export async function writeArchive(folder: string, archive: string): Promise<void> {
  const manifest = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as ExtensionManifest;
  const names = JSON.parse(await readFile(join(folder, 'package.nls.json'), 'utf8')) as Record<
    string,
    string
  >;
  const found = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = found
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
  const zip = new ZipFile();
  const add = (content: Buffer, path: string) =>
    zip.addBuffer(content, path, { mtime: new Date(1980, 0, 1), mode: 0o100644 });
  add(Buffer.from(vsixManifest(manifest, names)), 'extension.vsixmanifest');
  add(Buffer.from(contentTypes(paths)), '[Content_Types].xml');
  for (const path of paths) add(await readFile(join(folder, path)), `extension/${path}`);
  zip.end();
  await mkdir(dirname(archive), { recursive: true });
  await pipeline(zip.outputStream, createWriteStream(archive));
}

function vsixManifest(manifest: ExtensionManifest, names: Readonly<Record<string, string>>): string {
  const { name, version, publisher, displayName, description, categories, keywords, icon, engines } =
    manifest;
  const said = (text: string) => escaped(text.replace(/^%(.*)%$/, (whole, key) => names[key] ?? whole));
  const asset = (type: string, path: string) =>
    `    <Asset Type="Microsoft.VisualStudio.${type}" Path="extension/${path}" Addressable="true" />`;
  const property = (id: string, value: string) =>
    `      <Property Id="Microsoft.VisualStudio.${id}" Value="${escaped(value)}" />`;
  return `<?xml version="1.0" encoding="utf-8"?>
<PackageManifest Version="2.0.0" xmlns="http://schemas.microsoft.com/developer/vsx-schema/2011">
  <Metadata>
    <Identity Language="en-US" Id="${escaped(name)}" Version="${escaped(version)}" Publisher="${escaped(publisher)}" />
    <DisplayName>${said(displayName)}</DisplayName>
    <Description xml:space="preserve">${said(description)}</Description>
    <Tags>${escaped(keywords.join(','))}</Tags>
    <Categories>${escaped(categories.join(','))}</Categories>
    <GalleryFlags>Public</GalleryFlags>
    <Properties>
${property('Code.Engine', engines.vscode)}
${property('Code.ExtensionDependencies', '')}
${property('Code.ExtensionPack', '')}
${property('Code.ExtensionKind', 'ui,workspace,web')}
${property('Code.LocalizedLanguages', '')}
    </Properties>
    <License>extension/LICENSE</License>
    <Icon>extension/${escaped(icon)}</Icon>
  </Metadata>
  <Installation>
    <InstallationTarget Id="Microsoft.VisualStudio.Code" />
  </Installation>
  <Dependencies />
  <Assets>
${asset('Code.Manifest', 'package.json')}
${asset('Services.Content.Details', 'README.md')}
${asset('Services.Content.Changelog', 'CHANGELOG.md')}
${asset('Services.Content.License', 'LICENSE')}
${asset('Services.Icons.Default', icon)}
  </Assets>
</PackageManifest>
`;
}

function contentTypes(paths: readonly string[]): string {
  const endings = new Set([
    '.vsixmanifest',
    ...paths.map((path) => extname(path)).filter((each) => each !== ''),
  ]);
  const types = [...endings].map(
    (ending) => `  <Default Extension="${ending}" ContentType="${typeOf(ending)}" />`,
  );
  const bare = paths
    .filter((path) => extname(path) === '')
    .map((path) => `  <Override PartName="/extension/${escaped(path)}" ContentType="text/plain" />`);
  return `<?xml version="1.0" encoding="utf-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
${[...types, ...bare].join('\n')}
</Types>
`;
}

function typeOf(ending: string): string {
  return knownTypes.get(ending) ?? 'application/octet-stream';
}

const knownTypes: ReadonlyMap<string, string> = new Map([
  ['.vsixmanifest', 'text/xml'],
  ['.json', 'application/json'],
  ['.md', 'text/markdown'],
  ['.js', 'application/javascript'],
  ['.cjs', 'application/javascript'],
  ['.png', 'image/png'],
  ['.svg', 'image/svg+xml'],
]);

const escaped = (text: string): string => text.replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
