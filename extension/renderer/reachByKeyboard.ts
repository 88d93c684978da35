/**
 * What is wider than the page scrolls, and so must be reachable by keyboard, and only then: a table that fits is no
 * stop on the way. Named, so that who hears the page knows where they stopped.
 */
export function reachByKeyboard(root: ShadowRoot): { dispose(): void } {
  const observer = new ResizeObserver((entries) => {
    for (const { target } of entries) {
      if (target.scrollWidth > target.clientWidth) {
        target.setAttribute('tabindex', '0');
        target.setAttribute('role', 'group');
        target.setAttribute('aria-label', nameOf(target));
      } else for (const name of ['tabindex', 'role', 'aria-label']) target.removeAttribute(name);
    }
  });
  for (const wide of root.querySelectorAll('.wide, .finding pre')) observer.observe(wide);
  return { dispose: () => observer.disconnect() };
}

function nameOf(target: Element): string {
  if (target.tagName === 'PRE') return 'The line, wider than the page';
  const caption = target.querySelector('caption')?.textContent ?? '';
  return caption === '' ? 'Table, wider than the page' : `Table: ${caption}, wider than the page`;
}
