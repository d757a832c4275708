import { type FunctionComponent, isValidElement, type ReactNode } from 'react';

/**
 * What React would draw of parts that only show what they are given, without React DOM, which is half of the page's script and
 * comes after the first words.
 * @param content of functions without hooks, of HTML and of SVG
 */
export function drawnOnce(content: ReactNode, space = HTML): DocumentFragment {
  const drawn = document.createDocumentFragment();
  if (Array.isArray(content)) drawn.append(...content.map((part: ReactNode) => drawnOnce(part, space)));
  else if (typeof content === 'string' || typeof content === 'number') drawn.append(String(content));
  else if (isValidElement<Props>(content)) {
    const { type, props } = content;
    drawn.append(typeof type === 'string' ? element(type, props, space) : drawnOnce(called(type, props), space));
  }
  return drawn;
}

type Props = Readonly<Record<string, unknown>> & { readonly children?: ReactNode };

const HTML = 'http://www.w3.org/1999/xhtml';
const SVG = 'http://www.w3.org/2000/svg';

const called = (type: unknown, props: Props): ReactNode => (type as FunctionComponent<Props>)(props) as ReactNode;

function element(type: string, { children, ...attributes }: Props, space: string): Element {
  const own = type === 'svg' ? SVG : space;
  const made = document.createElementNS(own, type);
  for (const [name, value] of Object.entries(attributes))
    if (value !== undefined && value !== false)
      made.setAttribute(name === 'className' ? 'class' : name, value === true ? '' : String(value));
  made.append(drawnOnce(children, own));
  return made;
}
