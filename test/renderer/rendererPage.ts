import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { bundleRenderer } from '../../extension/build/bundleRenderer.ts';
import type { LookCloser } from '../../extension/shared/chartMessages.ts';
import type { Theme } from './themes.ts';

const require = createRequire(import.meta.url);
const home = 'http://renderer.test/';
const scripts = ['renderer.js', 'chart.js', 'host.js', 'axe.js'];

/**
 * The policy that the renderer is held to, stricter than an editor's: no eval, no request, no style written into the
 * page. With trusted types no text is read as HTML or as code; axe-core, which does that itself, goes without.
 */
export function policy(trustedTypes: boolean): string {
  return [
    "default-src 'none'",
    `script-src ${scripts.map((name) => home + name).join(' ')}`,
    "base-uri 'none'",
    "form-action 'none'",
    ...(trustedTypes ? ["require-trusted-types-for 'script'", "trusted-types 'none'"] : []),
  ].join('; ');
}

/** What host.js lends to the page. */
interface Host {
  readonly violations: string[];
  theme(theme: Theme): void;
  show(id: string, text: string, aborted?: boolean): Promise<void>;
  dispose(id?: string): void;
  text(id: string): string;
  count(id: string, selector: string): number;
  attribute(id: string, selector: string, name: string): string | null;
  colour(id: string, selector: string): string;
  painted(id: string, selector: string): string;
  scrolled(id: string, selector: string): number;
  points(id: string): number[];
  tryForbidden(): Promise<string[]>;
  focused(): string;
  barriers(): Promise<string[]>;
  /** What the renderer asked of the extension, in order. */
  readonly asked: LookCloser[];
  /** What the extension tells it. */
  tell(message: unknown): void;
}

declare global {
  var host: Host;
}

export interface RendererPage {
  readonly page: Page;
  /** Every address that was asked for, and every one that was refused. */
  readonly requests: readonly string[];
  /** Errors of the page and of its policy. */
  readonly errors: readonly string[];
}

export interface PageOptions {
  readonly trustedTypes?: boolean;
  readonly width?: number;
  readonly scale?: number;
}

/** The built renderer in a page of a browser, under the policy. */
export async function openRenderer(browser: Browser, options: PageOptions = {}): Promise<RendererPage> {
  const { trustedTypes = true, width = 900, scale = 1 } = options;
  const files = new Map([
    ['renderer.js', await builtRenderer()],
    ['chart.js', await builtChart()],
    ['host.js', readFileSync(new URL('host.js', import.meta.url), 'utf8')],
    ['axe.js', readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8')],
  ]);
  const context = await browser.newContext({ viewport: { width, height: 800 }, deviceScaleFactor: scale });
  const page = await context.newPage();
  const requests: string[] = [];
  const errors: string[] = [];
  page.on('pageerror', (problem) => errors.push(String(problem)));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.route('**', (route) => {
    const address = route.request().url();
    requests.push(address);
    const body = address === home ? html(!trustedTypes) : files.get(address.slice(home.length));
    if (body === undefined) return route.abort();
    return route.fulfill({
      body,
      contentType: address === home ? 'text/html; charset=utf-8' : 'text/javascript',
      headers: { 'Content-Security-Policy': policy(trustedTypes) },
    });
  });
  await page.goto(home);
  await page.waitForFunction(() => globalThis.host !== undefined);
  return { page, requests, errors };
}

const html = (withAxe: boolean): string => `<!doctype html>
<html lang="en"><head><title>Results</title>${withAxe ? '<script src="axe.js"></script>' : ''}
<script type="module" src="host.js"></script>
</head><body><main></main></body></html>`;

let built: Promise<string> | undefined;
const root = fileURLToPath(new URL('../..', import.meta.url));

export function builtRenderer(): Promise<string> {
  built ??= (async () => {
    const outfile = `${root}out/test/renderer.js`;
    await bundleRenderer(root, outfile);
    return readFileSync(outfile, 'utf8');
  })();
  return built;
}

/** The file beside it that draws charts. */
export async function builtChart(): Promise<string> {
  await builtRenderer();
  return readFileSync(`${root}out/test/chart.js`, 'utf8');
}
