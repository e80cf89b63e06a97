import { listText, longDate } from '#app/_words/clock.ts'
import { replyWords } from '#app/_words/guest.ts'
import { needText } from '#app/_words/need.ts'
import type { Guest } from '#lib/domain/people.ts'
import type { Reply } from '#server/guests/reply.ts'
import type { Problem } from './answer-of.ts'
import type { ReplyFields } from './fields.ts'
import { type Html, html } from './html.ts'
import { type Frame, headOf, pageOf } from './page.ts'
import { personForm, time } from './person.ts'

export interface Shown {
  readonly reply: Reply
  readonly fields: ReplyFields
  readonly problems: readonly Problem[]
  /** Why the whole was not stored. */
  readonly refused: string | null
  /** It has just been stored. */
  readonly sent: boolean
}

/** The page of a link: the evening, the answer in sentences, and what is stored of it. */
export const replyPage = (frame: Frame, shown: Shown): string => {
  const { reply } = shown
  const { evening } = reply
  const hosts =
    evening.hosts.length > 0
      ? `${listText(evening.hosts)} ask${evening.hosts.length === 1 ? 's' : ''} you to`
      : 'You are asked to'
  const head = headOf(hosts, evening.name, [
    `${longDate(evening.date)}, from ${evening.guestsFrom.time}.`,
    `We sit down at ${evening.sitDown.time}.`,
    ...(evening.place ? [evening.place] : []),
  ])
  return pageOf(
    frame,
    `${evening.name}: your answer`,
    html`${head}<main id="main" class="answer">${thanks(shown)}${problemList(shown)}${menuPart(reply)}${reply.open ? formPart(shown) : closedPart(reply)}${storedPart(reply)}</main>`,
  )
}

const thanks = ({ sent, reply }: Shown): Html =>
  sent && reply.answeredAt !== null
    ? html`<section class="note fine" role="status"><h2>Thank you, your answer is with them</h2>${told(reply.people)}</section>`
    : html``

const told = (people: readonly Guest[]): Html =>
  html`<ul>${people.map((person) => html`<li>${person.name}: ${toldText(person)}</li>`)}</ul>`

const toldText = ({ reply, needs }: Guest): string => {
  if (reply !== 'yes' && reply !== 'maybe') return replyWords[reply]
  const eats =
    needs === null ? 'has not said what they eat' : needs.length === 0 ? 'eats everything' : needs.map(needText).join(', ')
  return `${replyWords[reply]}; ${eats}`
}

const problemList = ({ problems, refused }: Shown): Html =>
  problems.length > 0 || refused !== null
    ? html`<section class="note late" role="alert"><h2>Not sent yet</h2>${refused === null ? null : html`<p>${refused}</p>`}${
        problems.length > 0
          ? html`<ul>${problems.map(({ field, text }) => html`<li><a class="jump" href="#${field}">${text}</a></li>`)}</ul>`
          : null
      }</section>`
    : html``

const menuPart = ({ menu }: Reply): Html =>
  menu === null || menu.length === 0
    ? html``
    : html`<details class="menu"><summary>What there will be</summary><dl>${menu.map(
        ({ name, dishes }) => html`<dt>${name}</dt><dd>${dishes.join(', ')}</dd>`,
      )}</dl></details>`

const formPart = ({ reply, fields, problems }: Shown): Html => {
  const known = Math.max(1, reply.people.length)
  const arrives = html` at ${time({ name: 'arrives', label: 'When you come', value: fields.arrives, problems })}`
  const people = fields.people.map((person, at) => personForm(person, at, problems, at === 0 ? arrives : null))
  const isOpen = (at: number) =>
    fields.people[at]?.name !== '' || problems.some(({ field }) => new RegExp(`-${at}(-|$)`).test(field))
  return html`<form method="post" data-answer>
<input type="hidden" name="revision" value="${fields.revision}"><input type="hidden" name="arrived-before" value="${fields.arrivedBefore}">
<div class="cloth"><h2 class="vh">Your answer in sentences</h2>
${people.slice(0, known)}${people
  .slice(known)
  .map(
    (person, index) =>
      html`<details class="more companion"${isOpen(known + index) ? html` open` : null}><summary>Somebody comes with me</summary>${person}</details>`,
  )}
</div>
<div class="consent"><label><input type="checkbox" id="consent" name="consent" value="yes"${fields.consent ? html` checked` : null}${
    problems.some(({ field }) => field === 'consent') ? html` aria-invalid="true"` : null
  }> <span>They may keep what we eat and what I wrote in my own words, for this dinner.</span></label>
<p>Your hosts read it. The cooks see what must be kept off the plates, and your name only where they make yours. You can change it or erase it here, and after ${longDate(reply.keptUntil)} it erases itself. Whether you come can be told without this.</p></div>
<div class="send"><button type="submit" name="do" value="answer">Send my answer</button>
<p>${reply.answerBy === null ? 'You can change it until your hosts close the answers.' : `You can change it until ${longDate(reply.answerBy)}.`} Only the hosts and cooks read it.</p></div>
</form>`
}

const closedPart = ({ people }: Reply): Html =>
  html`<section class="note"><h2>Answers can no longer be changed here</h2><p>If something is different now, please tell your hosts yourself.</p>${told(people)}</section>`

const storedPart = ({ consent, answeredAt, keptUntil }: Reply): Html =>
  html`<details class="stored"><summary>What is stored, and how to erase it</summary>
<p>${answeredAt === null ? 'You have not answered yet. Stored are the names above and what your hosts wrote down.' : 'Stored is what stands above, and when you sent it.'} ${
    consent ? 'You have agreed that what you eat is kept.' : 'You have not agreed that what you eat is kept.'
  } This link ends a week after the evening. All of it is erased by itself after ${longDate(keptUntil)}; if the evening is moved, that day moves with it.</p>
<p><a class="file" href="?file">Take all of it away as a file</a></p>
<form method="post"><p>Erasing takes out your names, your answers and your words for good, and this link then opens nothing. A copy that your hosts took away earlier is theirs to erase.</p>
<label><input type="checkbox" name="sure" value="yes" required> <span>Yes, all of it, for good.</span></label>
<button type="submit" name="do" value="erase" class="erase">Erase all of it</button></form></details>`
