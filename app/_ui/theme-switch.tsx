'use client'

import { useEffect, useState } from 'react'
import css from './bar.module.css'
import { readTheme, THEME_COOKIE, type Theme } from './theme.ts'

const YEAR_SECONDS = 31_536_000

const shown = (): Theme =>
  readTheme(document.documentElement.dataset.theme) ??
  (window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light')

/** Light or dark by hand. The choice is a cookie, so that the server paints the next page right at once. */
export function ThemeSwitch() {
  const [theme, setTheme] = useState<Theme>('light')
  useEffect(() => setTheme(shown()), [])
  const turn = () => {
    const next: Theme = shown() === 'dark' ? 'light' : 'dark'
    document.documentElement.dataset.theme = next
    // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is missing on plain http
    document.cookie = `${THEME_COOKIE}=${next}; path=/; max-age=${YEAR_SECONDS}; samesite=lax`
    setTheme(next)
  }
  const other = theme === 'dark' ? 'Light' : 'Dark'
  return (
    <button type="button" className={css.theme} onClick={turn} aria-label={`Switch to ${other.toLowerCase()} colours`}>
      <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
        <circle cx="10" cy="10" r="7.2" fill="none" stroke="currentColor" strokeWidth="1.6" />
        <path d="M10 2.8a7.2 7.2 0 0 1 0 14.4z" fill="currentColor" />
      </svg>
    </button>
  )
}
