import { Bar } from '#app/_ui/bar.tsx'
import { LinkButton } from '#app/_ui/button.tsx'
import { Plain } from '#app/_ui/plain.tsx'
import { Ready } from '#app/_ui/ready.tsx'

export default function NotFound() {
  return (
    <>
      <Bar />
      <Plain title="There is nothing here">
        <p>Either the address is wrong, or this evening is not one of yours. Its host can add you as a cook.</p>
        <p>
          <LinkButton href="/">Your evenings</LinkButton>
        </p>
      </Plain>
      <Ready />
    </>
  )
}
