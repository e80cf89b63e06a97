/** Small notes that outlive the page, written at once: IndexedDB may not have written yet when a tab is closed. */
export interface Shelf {
  get(key: string): string | null
  set(key: string, value: string): void
  remove(key: string): void
  /** The keys that begin so. */
  keys(prefix: string): string[]
}

/** A shelf that ends with the page, for browsers that keep nothing. */
export const pageShelf = (): Shelf => {
  const notes = new Map<string, string>()
  return {
    get: (key) => notes.get(key) ?? null,
    set: (key, value) => void notes.set(key, value),
    remove: (key) => void notes.delete(key),
    keys: (prefix) => [...notes.keys()].filter((key) => key.startsWith(prefix)),
  }
}

/** The browser's local storage; what cannot be written there is at least remembered while the page is open. */
export const browserShelf = (): Shelf => storageShelf(() => window.localStorage)

/** The same, until the tab is closed. */
export const sessionShelf = (): Shelf => storageShelf(() => window.sessionStorage)

const storageShelf = (open: () => Storage): Shelf => {
  const page = pageShelf()
  let storage: Storage
  try {
    storage = open()
    storage.getItem('tableward')
  } catch {
    return page
  }
  return {
    get: (key) => page.get(key) ?? storage.getItem(key),
    set(key, value) {
      try {
        storage.setItem(key, value)
        page.remove(key)
      } catch {
        page.set(key, value)
      }
    },
    remove(key) {
      page.remove(key)
      storage.removeItem(key)
    },
    keys(prefix) {
      const stored = Array.from({ length: storage.length }, (_, at) => storage.key(at) ?? '')
      return [...new Set([...stored, ...page.keys('')])].filter((key) => key.startsWith(prefix))
    },
  }
}
