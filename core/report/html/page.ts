import { escapeHtml } from './escape.ts';
import { style } from './style.ts';

/**
 * A whole HTML document in one file: nothing in it asks anything of the net, and no script runs.
 * The policy in its head holds a browser to that, whatever stands in a case.
 */
export function writePage(title: string, body: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">
<meta name="referrer" content="no-referrer">
<title>${escapeHtml(title)}</title>
<style>
${style}</style>
</head>
<body>
${body}
</body>
</html>
`;
}
