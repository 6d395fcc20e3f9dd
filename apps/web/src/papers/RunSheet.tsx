import { createElement, useMemo, type ReactNode } from 'react';
import { useInspector } from '../inspector/opening.js';

/** What a run sheet is made of; anything else in the answer is left out, and of attributes only these are kept. */
const elements = new Set(
  'main header div h1 h2 h3 p b table thead tbody tr th td span section ul ol li dl dt dd figure figcaption svg g path line rect circle title text'.split(
    ' ',
  ),
);
const attributes: Readonly<Record<string, string>> = {
  class: 'className',
  colspan: 'colSpan',
  scope: 'scope',
  d: 'd',
  x: 'x',
  y: 'y',
  x1: 'x1',
  x2: 'x2',
  y1: 'y1',
  y2: 'y2',
  cx: 'cx',
  cy: 'cy',
  r: 'r',
  width: 'width',
  height: 'height',
  viewBox: 'viewBox',
  fill: 'fill',
  'fill-rule': 'fillRule',
  stroke: 'stroke',
  'stroke-width': 'strokeWidth',
  'stroke-dasharray': 'strokeDasharray',
  'stroke-linecap': 'strokeLinecap',
  'stroke-linejoin': 'strokeLinejoin',
  transform: 'transform',
  role: 'role',
};

/** The run sheet as it prints, built anew from what the server sent: each number that has a quantity opens it. */
export function RunSheet({ html }: { readonly html: string }) {
  const { open } = useInspector();
  const sheet = useMemo(() => new DOMParser().parseFromString(withoutStyles(html), 'text/html').querySelector('.run-sheet'), [html]);
  if (!sheet) return <p className="cannot">The server sent no run sheet.</p>;
  return <div className="run-sheet">{childrenOf(sheet, open)}</div>;
}

type Open = (id: string, from?: HTMLElement) => void;

function childrenOf(node: Node, open: Open): ReactNode[] {
  return [...node.childNodes].map((child, at) =>
    child instanceof Text ? child.data : child instanceof Element ? elementOf(child, at, open) : null,
  );
}

function elementOf(element: Element, key: number, open: Open): ReactNode {
  const tag = element.localName;
  if (!elements.has(tag)) return null;
  const quantity = element.getAttribute('data-quantity');
  const properties: Record<string, unknown> = { key };
  for (const { name, value } of element.attributes) {
    const known = attributes[name];
    if (known) properties[known] = colours(value);
  }
  // One first heading to a page: that of the paper stands under the page's own.
  const name = tag === 'h1' ? 'h2' : tag === 'h2' ? 'h3' : tag === 'h3' ? 'h4' : tag;
  const children = childrenOf(element, open);
  return createElement(name, properties, ...(quantity && tag === 'tr' ? opening(children, element, quantity, open) : children));
}

/** The cell that names what is checked becomes the way to its number. */
function opening(cells: ReactNode[], row: Element, quantity: string, open: Open): ReactNode[] {
  const at = [...row.childNodes].findIndex((cell) => cell instanceof Element && cell.localName === 'td');
  const words = row.childNodes[at]?.textContent ?? quantity;
  return cells.map((cell, i) =>
    i === at ? (
      <td key={i}>
        <button type="button" className="run-sheet-open" data-quantity={quantity} onClick={(event) => open(quantity, event.currentTarget)}>
          {words}
        </button>
      </td>
    ) : (
      cell
    ),
  );
}

/** On the screen the paper's inks follow day and night. */
function colours(value: string): string {
  return value.replace(/^#000000$|^#000$/, 'var(--ink)').replace(/^#ffffff$|^#fff$/i, 'var(--paper-lift)');
}

/** The sheet brings styles for a page of its own; here the page's styles hold, and its policy admits no others. */
function withoutStyles(html: string): string {
  return html.replace(/<style[\s\S]*?<\/style>/g, '').replace(/ style="[^"]*"/g, '');
}
