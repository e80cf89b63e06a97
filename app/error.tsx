'use client'

import { Bar } from '#app/_ui/bar.tsx'
import { Button } from '#app/_ui/button.tsx'
import { Plain } from '#app/_ui/plain.tsx'

export default function Failed({ reset }: { readonly error: Error; readonly reset: () => void }) {
  return (
    <>
      <Bar />
      <Plain title="This page could not be shown">
        <p>What was said to be saved is saved. Try again; if it happens again, the server’s log says why.</p>
        <p>
          <Button onClick={reset}>Try again</Button>
        </p>
      </Plain>
    </>
  )
}
