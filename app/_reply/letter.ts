import { listText } from '#app/_words/clock.ts'
import { type InvitationFacts, invitationSubject, invitationText, reminderText } from '#app/_words/invitation.ts'
import type { SendLetter } from '#server/guests/do-command.ts'
import { type EveningFacts, readFacts } from '#server/guests/facts.ts'
import { live } from '#server/live.ts'

export const invitationFacts = (facts: EveningFacts): InvitationFacts => ({
  name: facts.name,
  date: facts.date,
  from: facts.guestsFrom.time,
  sitDown: facts.sitDown.time,
  hosts: listText(facts.hosts),
  place: facts.place,
})

/** Writes and sends the letters of one evening; false when no mail server is set or it did not take one. */
export const sendLetter =
  (eveningId: string): SendLetter =>
  async (to, letter) => {
    const { mail, address } = live()
    if (mail === null) return false
    const facts = invitationFacts(await readFacts(eveningId))
    const text = letter.kind === 'invitation' ? invitationText(facts, `${address}${letter.path}`) : reminderText(facts)
    return mail.send({ to, subject: invitationSubject(facts), text })
  }
