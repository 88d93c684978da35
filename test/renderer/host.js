// What an editor does with a renderer, on a page of its own: loads it as a module and hands it outputs.
const { activate } = await import(new URL('renderer.js', location.href).href);

const violations = [];
document.addEventListener('securitypolicyviolation', (event) => {
  violations.push(`${event.effectiveDirective} ${event.blockedURI} ${event.sample}`);
});

const asked = [];
const listeners = [];
const renderer = await activate({
  workspace: { isTrusted: false },
  postMessage: (message) => asked.push(message),
  onDidReceiveMessage: (listener) => listeners.push(listener),
});

/** Called from a debugger, eval is allowed until the call returns: what is tried here waits for a turn of its own. */
const ownTurn = () => new Promise((resolve) => setTimeout(resolve));

globalThis.host = {
  violations,
  asked,
  tell(message) {
    for (const each of listeners) each(message);
  },
  theme({ kind, variables }) {
    document.body.className = kind;
    const { style } = document.documentElement;
    for (const name of [...style]) style.removeProperty(name);
    for (const [name, value] of Object.entries(variables)) style.setProperty(name, value);
    document.body.style.background = 'var(--vscode-editor-background)';
    document.body.style.margin = '0';
    document.body.style.padding = '16px';
  },
  /** `text` is the output's content as it arrives. */
  async show(id, text, aborted = false) {
    const known = document.getElementById(id);
    const element = known ?? document.createElement('div');
    element.id = id;
    if (known === null) document.querySelector('main').append(element);
    const abort = new AbortController();
    if (aborted) abort.abort();
    const item = {
      id,
      mime: 'application/vnd.diag.result+json',
      json: () => JSON.parse(text),
      text: () => text,
    };
    await ownTurn();
    await renderer.renderOutputItem(item, element, abort.signal);
  },
  dispose: (id) => renderer.disposeOutputItem(id),
  // biome-ignore lint/performance/useDomNodeTextContent: what is seen is asked, without what is hidden
  text: (id) => document.getElementById(id)?.shadowRoot?.querySelector('.page')?.innerText ?? '',
  count: (id, selector) => document.getElementById(id)?.shadowRoot?.querySelectorAll(selector).length ?? 0,
  attribute: (id, selector, name) =>
    document.getElementById(id)?.shadowRoot?.querySelector(selector)?.getAttribute(name) ?? null,
  colour: (id, selector) => {
    const found = document.getElementById(id)?.shadowRoot?.querySelector(selector);
    return found ? getComputedStyle(found).color : '';
  },
  /** The colour that a line is drawn in. */
  painted: (id, selector) => {
    const found = document.getElementById(id)?.shadowRoot?.querySelector(selector);
    return found ? getComputedStyle(found).stroke : '';
  },
  scrolled: (id, selector) =>
    document.getElementById(id)?.shadowRoot?.querySelector(selector)?.scrollLeft ?? 0,
  /** Where the point of each number stands, or would stand, across the page. */
  points: (id) =>
    [...document.getElementById(id).shadowRoot.querySelectorAll('tbody td.num')].map((cell) => {
      const texts = [...cell.childNodes].flatMap((node) =>
        node.nodeType === 3 ? [node] : [...node.childNodes],
      );
      for (const node of texts) {
        const at = node.data.indexOf('.');
        if (at < 0) continue;
        const range = document.createRange();
        range.setStart(node, at);
        range.setEnd(node, at + 1);
        return range.getBoundingClientRect().left;
      }
      return Number.NaN;
    }),
  /** Does what a renderer must not do, and says what the policy stopped. */
  async tryForbidden() {
    await ownTurn();
    const stopped = [];
    const attempt = async (what, act) => {
      try {
        await act();
      } catch {
        stopped.push(what);
      }
    };
    // biome-ignore lint/security/noGlobalEval: it is what must be stopped
    await attempt('eval', () => globalThis.eval('1'));
    await attempt('Function', () => new Function('return 1')());
    await attempt('fetch', () => fetch('renderer.js'));
    await attempt(
      'image',
      () =>
        new Promise((resolve, reject) => {
          const image = new Image();
          image.onload = resolve;
          image.onerror = reject;
          image.src = 'data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA=';
        }),
    );
    await attempt('style', () => {
      const style = document.createElement('style');
      style.textContent = 'main { color: red }';
      document.head.append(style);
      if (style.sheet === null) throw new Error('no style sheet');
    });
    await attempt('innerHTML', () => {
      document.createElement('div').innerHTML = '<b>x</b>';
    });
    return stopped;
  },
  /** What has the focus, through shadow roots. */
  focused: () => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    return at?.getAttribute('aria-label') ?? at?.tagName ?? '';
  },
  async barriers() {
    // A reader meets a result once it is drawn; what is too wide is known by then and not before.
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    const rules = { region: { enabled: false } };
    const { violations: found } = await globalThis.axe.run('main', { rules, resultTypes: ['violations'] });
    return found.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.flat().join(' ')} ${node.failureSummary}`),
    );
  },
};
