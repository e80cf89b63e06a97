'use client'

import { useEffect } from 'react'

/** Marks the page as listening: `data-ready` on the document. */
export function Ready() {
  useEffect(() => {
    document.documentElement.dataset.ready = 'true'
    return () => {
      delete document.documentElement.dataset.ready
    }
  }, [])
  return null
}
