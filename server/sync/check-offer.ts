import * as Y from 'yjs'

/** Who wrote; `cook` is null for who is nobody in particular. */
export interface Writer {
  readonly role: 'host' | 'cook'
  readonly cook: string | null
}

type Touched = Y.AbstractType<unknown>

/** Whose offer it is stays so, and the answer to it is the hosts'. */
const HOSTS_FIELDS = ['cook', 'state', 'why', 'dish'] as const

const fieldValue = (type: Touched, name: string): unknown => {
  const item = type._map.get(name)
  return item && !item.deleted && item.content instanceof Y.ContentAny ? item.content.arr[0] : undefined
}

/** Why an offer that has just come may not be from this writer: a cook offers in their own name and answers nothing. */
export const checkNewOffer = (entry: Touched, { role, cook }: Writer): string | null => {
  if (role === 'host') return null
  if (cook === null || fieldValue(entry, 'cook') !== cook) return 'an offer in the name of another cook'
  const isOpen = fieldValue(entry, 'state') === 'offered' && !entry._map.has('why') && !entry._map.has('dish')
  return isOpen ? null : 'an offer that answers itself'
}

/** Why these fields of an offer may not be changed by this writer: a cook changes their own and withdraws it; a host answers it. */
export const checkOffer = (entry: Touched, keys: ReadonlySet<string | null>, { role, cook }: Writer): string | null => {
  if (role === 'host') return null
  const hosts = HOSTS_FIELDS.find((name) => keys.has(name))
  if (hosts !== undefined) return `offers.${hosts} is the hosts'`
  return cook !== null && fieldValue(entry, 'cook') === cook ? null : 'the offer of another cook'
}
