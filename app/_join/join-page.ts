import { type Html, html } from '#app/_reply/html.ts'
import { type Frame, headOf, pageOf } from '#app/_reply/page.ts'
import { listText, longDate } from '#app/_words/clock.ts'
import type { SeatOffer } from '#server/seats/offer.ts'
import type { SittingFields, SittingProblem } from './read-sitting.ts'

export interface ShownSeat {
  readonly offer: SeatOffer
  readonly fields: SittingFields
  readonly problems: readonly SittingProblem[]
  /** Why nobody sat down. */
  readonly refused: string | null
}

/** What the form shows at first. */
export const firstFields = ({ label, cook, free }: SeatOffer): SittingFields => ({
  as: 'name',
  name: cook?.name ?? label,
  cook: free.find(({ name }) => name === label)?.id ?? '',
  works: 'home',
  minutes: '15',
})

/** The page of a seat's link: what evening it is, and who sits down. */
export const joinPage = (frame: Frame, shown: ShownSeat): string => {
  const { evening, taken } = shown.offer
  const hosts =
    evening.hosts.length > 0
      ? `${listText(evening.hosts)} ask${evening.hosts.length === 1 ? 's' : ''} you to cook along`
      : 'You are asked to cook along'
  const head = headOf(hosts, evening.name, [`${longDate(evening.date)}. We sit down at ${evening.sitDown.time}.`])
  const body = taken === null ? freePart(shown) : takenPart(shown.offer, taken)
  return pageOf(
    frame,
    `${evening.name}: your seat`,
    html`${head}<main id="main" class="answer">${problemList(shown)}${body}${storedPart}</main>`,
  )
}

const problemList = ({ problems, refused }: ShownSeat): Html =>
  problems.length === 0 && refused === null
    ? html``
    : html`<section class="note late" role="alert"><h2>Not yet</h2>${refused === null ? null : html`<p>${refused}</p>`}${
        problems.length === 0
          ? null
          : html`<ul>${problems.map(({ field, text }) => html`<li><a class="jump" href="#${field}">${text}</a></li>`)}</ul>`
      }</section>`

/** Who sits there goes on; on a device of somebody else's that is said first. */
const takenPart = ({ eveningId, now }: SeatOffer, taken: NonNullable<SeatOffer['taken']>): Html => {
  const path = `/evenings/${eveningId}`
  if (now?.here && now.user.id === taken.userId)
    return html`<section class="note fine"><h2>You are in, ${taken.name}</h2><p><a class="file" href="${path}">Go to the evening</a></p></section>`
  if (taken.account)
    return html`<section class="note"><h2>This is the seat of ${taken.name}</h2><p>It has an account: sign in with its e-mail address and password.</p><p><a class="file" href="/sign-in?next=${encodeURIComponent(path)}">Sign in</a></p></section>`
  return html`<form method="post" data-answer><input type="hidden" name="as" value="again">
<div class="cloth"><h2 class="vh">Whose seat it is</h2><div class="said">You are ${taken.name}.</div></div>${endsHere(now?.user.id === taken.userId ? null : now)}
<div class="send"><button type="submit" name="do" value="answer">Go on as ${taken.name}</button>
<p>This device is then another one of theirs.</p></div></form>`
}

const endsHere = (now: SeatOffer['now']): Html =>
  now === null ? html`` : html`<p class="note">${now.user.name} is signed in on this device now. That ends when you go on.</p>`

const freePart = (shown: ShownSeat): Html => {
  const { now } = shown.offer
  const account = now !== null && now.user.email !== null ? now : null
  if (account?.here)
    return html`<section class="note"><h2>${account.user.name}, you have a seat already</h2><p>This link is for somebody else: give it to them.</p><p><a class="file" href="/evenings/${shown.offer.eveningId}">Go to the evening</a></p></section>`
  const other =
    now !== null && now.user.email === null
      ? html`<p class="note">${now.user.name} sits at ${now.here ? 'this' : 'another'} evening by a link on this device. That ends here when you sit down; their link opens their seat again.</p>`
      : html``
  return html`${account === null ? null : formPart(shown, account.user.name)}${
    account === null ? null : html`<p class="note">Or sit down without your account. It is then signed out on this device.</p>`
  }${other}${formPart(shown, null)}`
}

/** `account`: by whose account; null: by a name alone. */
const formPart = ({ offer, fields, problems }: ShownSeat, account: string | null): Html => {
  const mark = account === null ? '' : '-account'
  const wrong = (field: SittingProblem['field']): Html =>
    account === null && problems.some((problem) => problem.field === field)
      ? html` aria-invalid="true" aria-describedby="${field}-wrong"`
      : html``
  const told = (field: SittingProblem['field']) =>
    account === null
      ? problems
          .filter((problem) => problem.field === field)
          .map(({ text }) => html`<span class="wrong" id="${field}-wrong">${text}</span>`)
      : []
  const name =
    account === null
      ? html`<input class="word" id="name" name="name" aria-label="Your name" value="${fields.name}" maxlength="80" placeholder="my name" autocomplete="name" size="${Math.max(4, fields.name.length)}"${wrong('name')}>${told('name')}`
      : html`${account}`
  const who =
    offer.cook === null
      ? html`, ${cookChoice(offer, fields, mark)}`
      : offer.cook.name === fields.name
        ? null
        : html`, ${offer.cook.name} in the plan`
  const where =
    offer.cook === null
      ? html`<div class="said newcomer">I cook <select class="word works" id="works${mark}" name="works" aria-label="Where you cook">${[
          ['home', 'at home and bring it'],
          ['here', `in ${offer.kitchen || 'their kitchen'}`],
        ].map(
          ([value, words]) =>
            html`<option value="${value ?? ''}"${fields.works === value ? html` selected` : null}>${words ?? ''}</option>`,
        )}</select><span class="far">, <input class="word" id="minutes${mark}" name="minutes" aria-label="Minutes on the way to their table" value="${fields.minutes}" maxlength="3" size="3" inputmode="numeric"${wrong('minutes')}> minutes away</span>.${told('minutes')}</div>`
      : html`<input type="hidden" name="works" value="here">`
  return html`<form method="post" data-answer class="sit"><input type="hidden" name="as" value="${account === null ? 'name' : 'account'}">
<div class="cloth"><h2 class="vh">${account === null ? 'Who you are, in a sentence' : 'With your account'}</h2><div class="said">I am ${name}${who}.</div>${where}</div>
<div class="send"><button type="submit" name="do" value="answer">${account === null ? 'Sit down' : `Sit down as ${account}`}</button>
<p>${account === null ? 'No account and no e-mail address. Hours, kitchen and all the rest you correct inside.' : 'The evening is then on the list of your account.'}</p></div></form>`
}

const cookChoice = ({ free }: SeatOffer, fields: SittingFields, mark: string): Html =>
  html`<select class="word cook" id="cook${mark}" name="cook" aria-label="Which cook of the plan you are">${[
    { id: '', name: 'not in the plan yet' },
    ...free,
  ].map(
    ({ id, name }) =>
      html`<option value="${id}"${fields.cook === id ? html` selected` : null}>${id === '' ? name : `${name} in the plan`}</option>`,
  )}</select>`

const storedPart = html`<details class="stored"><summary>What this link is</summary>
<p>It is your seat, and yours alone: whoever has it is you. Open it on each device that you use, and keep it to yourself. If it gets into other hands, ask for a new one; the old one then opens nothing.</p>
<p>Stored are your name and what you write in the plan, which everybody who cooks sees. The link ends a week after the evening. Inside, under your name, you can take a password instead, or leave and be forgotten.</p></details>`
