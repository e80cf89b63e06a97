import { ShownLink } from '#app/_guests/shown-link.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { listText } from '#app/_words/clock.ts'
import { seatText } from '#app/_words/join.ts'

interface Props {
  readonly made: { readonly label: string; readonly path: string }
  readonly onDone: () => void
}

/** A new link to a seat. */
export function MadeSeat({ made: { label, path }, onDone }: Props) {
  const { evening } = usePlan()
  const link = `${window.location.origin}${path}`
  const hosts = listText(evening.cooks.filter(({ host }) => host).map(({ name }) => name))
  const facts = { name: evening.name, date: evening.date, sitDown: evening.sitDown.time, hosts }
  return (
    <ShownLink
      label={label}
      link={link}
      words={seatText(facts, label, link)}
      about={`It is shown this once, and cannot be read again from what is kept. Whoever has it is ${label}, so send it to nobody else. If it is lost, make a new one.`}
    >
      <Button tone="soft" onClick={onDone}>
        I have it, put it away
      </Button>
    </ShownLink>
  )
}
