import { parseDocument } from 'htmlparser2'

/** The parts of an HTML page that a browser without scripts goes by. */
type Node = ReturnType<typeof parseDocument>['children'][number]

const walk = function* (nodes: readonly Node[]): Generator<Node> {
  for (const node of nodes) {
    yield node
    if ('children' in node) yield* walk(node.children)
  }
}

type Element = Extract<Node, { readonly attribs: unknown }>
const elements = (nodes: readonly Node[]): Element[] => [...walk(nodes)].filter((node): node is Element => 'attribs' in node)

export const textOf = (nodes: readonly Node[]): string =>
  [...walk(nodes)].map((node) => (node.type === 'text' ? node.data : '')).join('')

/** What a browser would post of the first form with such an attribute, as its fields stand; null when there is no such form. */
export const formOf = (page: string, attribute: string): URLSearchParams | null => {
  const form = elements(parseDocument(page).children).find(({ name, attribs }) => name === 'form' && attribute in attribs)
  if (!form) return null
  const posted = new URLSearchParams()
  for (const { name, attribs, children } of elements(form.children)) {
    const field = attribs.name
    if (field === undefined) continue
    if (name === 'select') {
      const options = elements(children).filter((each) => each.name === 'option')
      posted.append(field, (options.find((each) => 'selected' in each.attribs) ?? options[0])?.attribs.value ?? '')
    } else if (name === 'textarea') posted.append(field, textOf(children).replace(/^\n/, ''))
    else if (name === 'input' && (attribs.type !== 'checkbox' || 'checked' in attribs)) posted.append(field, attribs.value ?? '')
  }
  return posted
}

/** The words of all elements of a class, and of those with an id that begins so. */
export const wordsOf = (page: string, className: string): readonly string[] =>
  elements(parseDocument(page).children)
    .filter(({ attribs }) => (attribs.class ?? '').split(' ').includes(className))
    .map(({ children }) => textOf(children).replace(/\s+/g, ' ').trim())
