import { checkCharts } from '../../core/chart/checkCharts.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { filesNamedIn } from '../../core/study/filesNamed.ts';
import type { Study } from '../../core/study/types.ts';
import type { CheckFileResult } from '../shared/protocol.ts';
import type { FilesOfCases } from './caseFiles.ts';
import { findingsByView, type PlacedFinding } from './openCase.ts';
import type { OpenCases } from './openCases.ts';
import { seenCase } from './seen.ts';
import type { ServerSettings } from './settings.ts';
import { writtenFile } from './textFile.ts';

/** Case files that are not open, checked on demand. Their findings stay until they are taken back or the file is opened. */
export class ClosedFiles {
  readonly #shown = new Set<string>();
  readonly #cases: OpenCases;
  readonly #files: FilesOfCases;
  readonly #settingsFor: (uri: string) => Promise<ServerSettings>;
  readonly #show: (uri: string, findings: readonly PlacedFinding[]) => void;

  constructor(
    cases: OpenCases,
    files: FilesOfCases,
    settingsFor: (uri: string) => Promise<ServerSettings>,
    show: (uri: string, findings: readonly PlacedFinding[]) => void,
  ) {
    this.#cases = cases;
    this.#files = files;
    this.#settingsFor = settingsFor;
    this.#show = show;
  }

  async check(uri: string, text: string): Promise<CheckFileResult> {
    const settings = await this.#settingsFor(uri);
    const open = this.#cases.openCase(uri);
    if (open !== undefined) return counted(open.study);
    const document = { kind: 'text', uri, version: 0, text } as const;
    const written = writtenFile(document);
    const files = this.#files.of(uri);
    let study = checkCase(text, undefined, files);
    if (filesNamedIn(study.file).size > 0) {
      await this.#files.settled(uri);
      study = checkCase(text, study, files);
      this.#files.release(uri);
    }
    const seen = seenCase(document, written, checkCharts(study), settings);
    this.#shown.add(uri);
    this.#show(uri, findingsByView(seen).flat());
    return counted(seen.study);
  }

  forget(uri: string): void {
    if (this.#shown.delete(uri)) this.#show(uri, []);
  }

  forgetAll(): void {
    for (const uri of this.#shown) this.#show(uri, []);
    this.#shown.clear();
  }
}

function counted({ findings }: Study): CheckFileResult {
  const count = { error: 0, warning: 0, info: 0 };
  for (const { diagnostic } of findings) count[diagnostic.severity]++;
  return { errors: count.error, warnings: count.warning, infos: count.info };
}
