import { Button } from '#app/_ui/button.tsx'
import { type InvitationFacts, invitationText } from '#app/_words/invitation.ts'
import { ShownLink } from './shown-link.tsx'

export interface Made {
  /** Whose link it is. */
  readonly label: string
  /** Where it leads on this site. */
  readonly path: string
  /** The letter with it has gone out. */
  readonly sent: boolean
}

interface Props {
  readonly made: Made
  readonly facts: InvitationFacts
  readonly onDone: () => void
}

/** A new link by which a household answers. */
export function MadeLink({ made: { label, path, sent }, facts, onDone }: Props) {
  const link = `${window.location.origin}${path}`
  return (
    <ShownLink
      label={label}
      link={link}
      words={invitationText(facts, link)}
      about={`${sent ? 'The letter is on its way. ' : ''}It is shown this once, and cannot be read again from what is kept. Whoever has it can answer for ${label}, so send it to nobody else. If it is lost, make a new one.`}
    >
      <Button onClick={onDone}>I have it, put it away</Button>
    </ShownLink>
  )
}
