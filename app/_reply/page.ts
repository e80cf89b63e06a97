import { asHtml, type Html, html } from './html.ts'

/** What a page of a link needs of its request. */
export interface Frame {
  /** The style sheet. */
  readonly css: string
  /** Lets our own script run, and no other. */
  readonly nonce: string
  readonly theme: 'light' | 'dark' | null
}

const SCRIPT = `
const form = document.querySelector('form[data-answer]')
form?.addEventListener('submit', () => {
  const button = form.querySelector('button[value=answer]')
  setTimeout(() => { button.disabled = true; button.textContent = 'Sending' })
})
addEventListener('pageshow', (event) => { if (event.persisted) location.reload() })
document.documentElement.dataset.ready = 'true'
`

/** A whole page: it works without its script, which only keeps a second tap from sending twice. */
export const pageOf = ({ css, nonce, theme }: Frame, title: string, body: Html): string =>
  html`<!doctype html>
<html lang="en-GB"${theme === null ? '' : asHtml(` data-theme="${theme}"`)}>
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex, nofollow">
<title>${title} · Tableward</title>
<link rel="icon" href="/mark.svg">
<style>${asHtml(css)}</style>
</head>
<body>
<a class="skip" href="#main">Skip to the page</a>
${body}
<script nonce="${nonce}">${asHtml(SCRIPT)}</script>
</body>
</html>`.text

/** Above everything: who asks, to what, when. */
export const headOf = (small: string, title: string, lines: readonly string[]): Html =>
  html`<header class="head"><p class="mark">${MARK} ${small}</p><h1>${title}</h1>${lines.map((line) => html`<p>${line}</p>`)}</header>`

const MARK = asHtml(
  '<svg width="30" height="30" viewBox="0 0 30 30" aria-hidden="true"><circle cx="14" cy="17" r="11" fill="none" stroke="currentColor" stroke-width="1.8"/><circle cx="14" cy="17" r="6.4" fill="none" stroke="currentColor" stroke-width="1.4" stroke-dasharray="3 2.2"/><path d="M25.4 1c2.3 3.7 3.2 6 3.2 8.6a3.6 4 0 0 1-7.2 0c0-2.8 2.2-4.6 4-8.6z" fill="#f0a422"/></svg>',
)

/** A page with nothing to fill in. */
export const plainPage = (frame: Frame, title: string, lines: readonly string[]): string =>
  pageOf(
    frame,
    title,
    html`${headOf('Tableward', title, [])}<main id="main" class="plain">${lines.map((line) => html`<p>${line}</p>`)}</main>`,
  )

/** One and the same for a link that never was, was withdrawn, was replaced, was erased or has run out. */
export const unknownPage = (frame: Frame): string =>
  plainPage(frame, 'This link opens nothing', [
    'It may have been replaced by a newer one, taken back, erased, or it has run out: links end a week after the evening.',
    'Ask whoever sent it to you for a new one.',
  ])
