import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { laterPiece } from '#app/_ui/later.tsx'

test('U70 a piece that cannot be fetched without a network says so in its own place, and is there where it can', async () => {
  const Lost = await laterPiece<object>(() => Promise.reject(new TypeError('Failed to fetch')))()
  expect(renderToStaticMarkup(<Lost />)).toContain('when there is a connection')
  const Found = await laterPiece<object>(async () => () => <p>found</p>)()
  expect(renderToStaticMarkup(<Found />)).toBe('<p>found</p>')
})
