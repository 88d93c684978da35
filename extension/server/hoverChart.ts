import type { ChartAt } from '../../core/service/chartAt.ts';
import type { Hover } from '../../core/service/types.ts';
import { loadCharts } from './loadCharts.ts';

/** Characters that an editor shows of an image in a hover. */
const most = 100_000;

/** What stands at a place, and the chart that belongs to it as an image. One that an editor would not show is left out. */
export async function withChart(
  hover: Hover | undefined,
  { span, title, spec }: ChartAt,
): Promise<Hover | undefined> {
  const { image } = await loadCharts();
  const uri = `data:image/svg+xml;base64,${base64(image(spec))}`;
  if (uri.length > most) return hover;
  const picture = `![${title.replace(/[[\]\\`*_<>]/g, ' ')}](${uri})`;
  return {
    span: hover?.span ?? span,
    markdown: hover === undefined ? picture : `${picture}\n\n${hover.markdown}`,
  };
}

/** Of the text's UTF-8; the same in a process and in a worker. */
function base64(text: string): string {
  let binary = '';
  for (const byte of new TextEncoder().encode(text)) binary += String.fromCharCode(byte);
  return btoa(binary);
}
