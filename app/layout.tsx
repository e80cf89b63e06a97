import '@fontsource-variable/figtree/index.css'
import '@fontsource-variable/piazzolla/opsz-italic.css'
import '@fontsource-variable/piazzolla/opsz.css'
import './fallback-fonts.css'
import './tokens.css'
import './base.css'
import type { Metadata, Viewport } from 'next'
import { cookies } from 'next/headers'
import type { ReactNode } from 'react'
import { preload } from 'react-dom'
import { readTheme, THEME_COOKIE } from './_ui/theme.ts'

/** Every page is rendered for its request: the security policy has a nonce for each. */
export const dynamic = 'force-dynamic'

export const metadata: Metadata = {
  title: { default: 'Tableward', template: '%s · Tableward' },
  description: 'Plan a dinner of several courses, and spend it at the table.',
  icons: { icon: '/mark.svg', apple: '/icons/apple.png' },
  appleWebApp: { title: 'Tableward' },
}

export const viewport: Viewport = { width: 'device-width', initialScale: 1 }

/** What every page is written in; other alphabets' letters are fetched where they are met. */
const FONTS = [
  new URL('../node_modules/@fontsource-variable/figtree/files/figtree-latin-wght-normal.woff2', import.meta.url),
  new URL('../node_modules/@fontsource-variable/piazzolla/files/piazzolla-latin-opsz-normal.woff2', import.meta.url),
].map(({ pathname }) => pathname)

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  for (const font of FONTS) preload(font, { as: 'font', type: 'font/woff2', crossOrigin: 'anonymous' })
  const theme = readTheme((await cookies()).get(THEME_COOKIE)?.value)
  return (
    <html lang="en-GB" data-theme={theme ?? undefined}>
      <body>
        <a className="skip" href="#main">
          Skip to the page
        </a>
        {children}
      </body>
    </html>
  )
}
