import { checkCharts } from '../../core/chart/checkCharts.ts';
import type { CaseFiles } from '../../core/recording/files.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import type { CellResult } from '../../core/service/cellResult.ts';
import type { Service } from '../../core/service/service.ts';
import { filesNamedIn } from '../../core/study/filesNamed.ts';
import type { Study } from '../../core/study/types.ts';
import type { ResultsParams } from '../shared/protocol.ts';
import { defaultSettings } from '../shared/settings.ts';
import type { Host } from './host.ts';
import type { Notebook } from './notebook.ts';
import { type Found, findingsByView, type OpenCase, type PlacedFinding } from './openCase.ts';
import { resultsOf } from './results.ts';
import { sameFindings } from './sameFindings.ts';
import { seenCase } from './seen.ts';
import type { ServerSettings } from './settings.ts';
import { type TextFile, writtenFile } from './textFile.ts';
import type { View } from './view.ts';
import type { Viewed, Written } from './written.ts';
import { type WrittenNotebook, writtenNotebook } from './writtenNotebook.ts';

export type CaseDocument = Notebook | TextFile;

/** Where findings and results go, and where settings come from. */
export interface Editor {
  readonly showFindings: (
    uri: string,
    version: number | undefined,
    findings: readonly PlacedFinding[],
  ) => void;
  readonly showResults: (results: ResultsParams) => void;
  readonly settingsFor: (uri: string) => Promise<ServerSettings>;
  /** What the host has for the files that a case names. */
  readonly filesOf: (uri: string) => CaseFiles;
  /** After a study: what other documents show of it (hints, colours) may have changed. */
  readonly studied: () => void;
}

interface Held {
  document: CaseDocument;
  /** What the last study saw, as it came from the core; the next one starts from it. */
  study: Study | undefined;
  /** The case as it is seen now; undefined while a change waits to be studied. */
  open: OpenCase | undefined;
  /** The last study's notebook as it was written, and its views. */
  written: WrittenNotebook | undefined;
  viewed: Viewed | undefined;
  settings: ServerSettings | undefined;
  /** Kept open by the editor without being seen: its findings are none. */
  hidden: boolean;
  /** What each document shows now, by its uri, and all together while the case is seen. */
  readonly shown: Map<string, Shown>;
  found: Found | undefined;
  /** The results that the client has, by the uri of the cell. */
  readonly sent: Map<string, CellResult>;
  /** How long the last study took, in milliseconds. */
  lasted: number;
  cancelStudy: (() => void) | undefined;
  cancelResults: (() => void) | undefined;
}

interface Shown {
  readonly version: number;
  readonly findings: readonly PlacedFinding[];
}

/** A question about a document: its case, up to date with its text, and the view that was asked about. */
export interface Asked {
  readonly open: OpenCase;
  readonly view: View;
  readonly settings: ServerSettings;
}

/**
 * The cases that are open. A change is studied soon after it came, together with those that follow at once;
 * a question before that has it studied first. Findings of all documents of a case go out together, then results.
 */
export class OpenCases {
  readonly #held = new Map<CaseDocument['kind'], Map<string, Held>>([
    ['notebook', new Map()],
    ['text', new Map()],
  ]);
  readonly #host: Host;
  readonly #service: Service;
  readonly #editor: Editor;

  constructor(host: Host, service: Service, editor: Editor) {
    this.#host = host;
    this.#service = service;
    this.#editor = editor;
  }

  open(document: CaseDocument): void {
    const held: Held = {
      document,
      study: undefined,
      open: undefined,
      written: undefined,
      viewed: undefined,
      settings: undefined,
      hidden: false,
      shown: new Map(),
      found: undefined,
      sent: new Map(),
      lasted: 0,
      cancelStudy: undefined,
      cancelResults: undefined,
    };
    this.#of(document.kind).set(document.uri, held);
    this.#fetchSettings(held);
  }

  notebook(uri: string): Notebook | undefined {
    const document = this.#of('notebook').get(uri)?.document;
    return document?.kind === 'notebook' ? document : undefined;
  }

  textFile(uri: string): TextFile | undefined {
    const document = this.#of('text').get(uri)?.document;
    return document?.kind === 'text' ? document : undefined;
  }

  /** A document as it is now, after a change. One that is not open is none of ours. */
  change(document: CaseDocument): void {
    const held = this.#of(document.kind).get(document.uri);
    if (held === undefined) return;
    held.document = document;
    held.open = undefined;
    held.cancelResults?.();
    held.cancelResults = undefined;
    this.#studySoon(held);
  }

  close(kind: CaseDocument['kind'], uri: string): void {
    const held = this.#of(kind).get(uri);
    if (held === undefined) return;
    held.cancelStudy?.();
    held.cancelResults?.();
    this.#of(kind).delete(uri);
    for (const shown of held.shown.keys()) this.#editor.showFindings(shown, undefined, []);
  }

  /** The case of a text document: a cell of a notebook, or a file that is open as text. */
  ask(uri: string): Asked | undefined {
    const asText = this.#of('text').get(uri);
    const held = asText ?? this.#notebookWith(uri);
    if (held === undefined) return undefined;
    const open = this.#upToDate(held);
    const view = open.views.find((each) => each.uri === uri);
    return view === undefined ? undefined : { open, view, settings: held.settings ?? defaultSettings };
  }

  /** The case that is open under this uri as a whole, as a notebook or as text. */
  openCase(uri: string): OpenCase | undefined {
    const held = this.#of('notebook').get(uri) ?? this.#of('text').get(uri);
    return held === undefined ? undefined : this.#upToDate(held);
  }

  /** Studies from nothing, and shows everything again. */
  recompute(uri: string): void {
    const held = this.#of('notebook').get(uri) ?? this.#of('text').get(uri);
    if (held === undefined) return;
    held.study = undefined;
    held.open = undefined;
    held.sent.clear();
    this.#upToDate(held);
  }

  /** Files that a case names may have changed: it is studied again, and what does not read from them stays. */
  filesChanged(uri: string): void {
    for (const cases of this.#held.values()) {
      const held = cases.get(uri);
      if (held === undefined) continue;
      held.open = undefined;
      this.#studySoon(held);
    }
  }

  /** The files that open cases name, by the cases' uris. */
  filesNamed(): ReadonlyMap<string, ReadonlySet<string>> {
    const named = new Map<string, ReadonlySet<string>>();
    for (const cases of this.#held.values()) {
      for (const [uri, { study }] of cases)
        named.set(uri, study === undefined ? none : filesNamedIn(study.file));
    }
    return named;
  }

  /** A notebook that nobody sees any more, or again. */
  setShown(uri: string, shown: boolean): void {
    const held = this.#of('notebook').get(uri);
    if (held === undefined || held.hidden !== shown) return;
    held.hidden = !shown;
    if (held.settings !== undefined) this.#show(held, this.#upToDate(held));
  }

  /** Settings may have changed: asks for them again and shows what follows. */
  settingsChanged(): void {
    for (const cases of this.#held.values()) for (const held of cases.values()) this.#fetchSettings(held);
  }

  #of(kind: CaseDocument['kind']): Map<string, Held> {
    const cases = this.#held.get(kind);
    if (cases === undefined) throw new Error(`There are no documents of kind ${kind}.`);
    return cases;
  }

  #notebookWith(cell: string): Held | undefined {
    for (const held of this.#of('notebook').values()) {
      if (held.document.kind === 'notebook' && held.document.cells.some((each) => each.uri === cell))
        return held;
    }
    return undefined;
  }

  #fetchSettings(held: Held): void {
    void this.#editor.settingsFor(held.document.uri).then((settings) => {
      held.settings = settings;
      held.open = undefined;
      if (this.#of(held.document.kind).get(held.document.uri) === held) this.#upToDate(held);
    });
  }

  /** While studies are quick there is no pause; a case that takes long is left alone until the typing rests. */
  #studySoon(held: Held): void {
    held.cancelStudy?.();
    const pause = held.lasted < 10 ? 0 : Math.min(held.lasted, longestPause);
    held.cancelStudy = this.#host.later(pause, () => this.#upToDate(held));
  }

  #upToDate(held: Held): OpenCase {
    held.cancelStudy?.();
    held.cancelStudy = undefined;
    if (held.open !== undefined) return held.open;
    const from = this.#host.now();
    const { document } = held;
    const written = writtenOf(held);
    held.study = checkCharts(checkCase(written.file, held.study, this.#editor.filesOf(document.uri)));
    const open = seenCase(document, written, held.study, held.settings ?? defaultSettings, held.viewed);
    held.open = open;
    held.viewed = open;
    if (held.settings !== undefined) this.#show(held, open);
    held.lasted = this.#host.now() - from;
    return open;
  }

  #show(held: Held, open: OpenCase): void {
    const before = held.found;
    const now = held.hidden ? undefined : { of: open, byView: findingsByView(open, before) };
    held.found = now;
    open.views.forEach((view, index) => {
      const findings = now?.byView[index] ?? noFindings;
      const isSame = view === before?.of.views[index] && findings === before.byView[index];
      if (!isSame) this.#showIn(held, view, findings);
    });
    if (held.shown.size > open.views.length) this.#forget(held, open);
    this.#editor.studied();
    if (open.isNotebook) {
      held.cancelResults?.();
      held.cancelResults = this.#host.later(restOfTyping, () => this.#showResults(held, open));
    }
  }

  #showIn({ shown }: Held, { uri, version }: View, findings: readonly PlacedFinding[]): void {
    const before = shown.get(uri);
    shown.set(uri, { version, findings });
    const isKnown = before?.version === version && sameFindings(before.findings, findings);
    const isEmpty = findings.length === 0 && (before?.findings.length ?? 0) === 0;
    if (!isKnown && !isEmpty) this.#editor.showFindings(uri, version, findings);
  }

  /** Documents that show the case no longer. */
  #forget(held: Held, { views }: OpenCase): void {
    const uris = new Set(views.map((each) => each.uri));
    for (const uri of held.shown.keys()) {
      if (uris.has(uri)) continue;
      held.shown.delete(uri);
      this.#editor.showFindings(uri, undefined, []);
    }
  }

  /** Late ones are dropped: a result is sent only while its case is as it was when it was studied. */
  #showResults(held: Held, open: OpenCase): void {
    if (held.open !== open) return;
    const { units } = held.settings ?? defaultSettings;
    this.#editor.showResults(resultsOf(open, this.#service, units, held.sent));
  }
}

function writtenOf(held: Held): Written {
  const { document } = held;
  if (document.kind === 'text') return writtenFile(document);
  held.written = writtenNotebook(document, held.written);
  return held.written;
}

const none: ReadonlySet<string> = new Set();
const noFindings: readonly PlacedFinding[] = [];

/** Milliseconds: between two keystrokes of one burst, results would only hold up the next findings. */
const restOfTyping = 20;

/** Milliseconds. */
const longestPause = 300;
