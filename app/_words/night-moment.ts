import type { Answer } from '#app/_tonight/moments/answer.ts'
import type { Reply } from '#app/_tonight/moments/caught-up.ts'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { KeepHow } from '#lib/domain/menu.ts'
import type { CatchUp } from '#lib/night/catch-up.ts'
import type { Job } from '#lib/night/jobs.ts'
import { clockText, countOf, listText, sentence } from './clock.ts'
import { durationText } from './duration.ts'
import type { Names } from './names.ts'
import { wayText } from './way.ts'

/** What may have happened, as one says it. */
export type Moment = 'late' | 'raw' | 'failed' | 'gone' | 'allergen' | 'lost'

export const momentWords: Readonly<Record<Moment, { readonly title: string; readonly asks: string }>> = {
  late: { title: 'Guests are late', asks: 'What do we do until they come?' },
  raw: { title: 'A dish is not ready', asks: 'The rest of its course is.' },
  failed: { title: 'A dish has failed', asks: 'What goes out instead?' },
  gone: { title: 'A hand is missing', asks: 'Who cannot help now?' },
  allergen: { title: 'An allergen got in', asks: 'Set the dish aside first; then tell everybody here.' },
  lost: { title: 'Where are we?', asks: 'Tell what has happened meanwhile: the rest is planned from there.' },
}

interface AnswerWords {
  /** On the button. */
  readonly title: string
  /** What it comes to at once, before anything is reckoned. */
  readonly about: string
}

const keepsWords: Readonly<Record<KeepHow, string>> = {
  hot: 'keeps hot',
  warm: 'keeps warm',
  room: 'may stand',
  cold: 'keeps in the cold',
  frozen: 'keeps frozen',
}

/** "Soup keeps hot 20 min": what waits for those who are late. */
const waitsText = (evening: Evening, course: string): string =>
  listText(
    evening.dishes
      .filter((dish) => dish.course === course && dish.state === 'on')
      .map(
        ({ name, keeps }) =>
          `${name} ${keepsWords[keeps.how]} ${minutesOf(keeps.most) > 0 ? durationText(keeps.most) : 'not at all'}`,
      ),
  )

export const answerWords = (answer: Answer, evening: Evening, names: Names): AnswerWords => {
  switch (answer.kind) {
    case 'wait':
      return { title: `Wait ${answer.minutes} min`, about: `Sit down ${clockText(answer.sitDown, evening.zone)}.` }
    case 'begin': {
      const waits = waitsText(evening, answer.course)
      return {
        title: 'Begin',
        about: `With those who are here${answer.moved ? ', as it was planned' : ''}. ${waits ? `${waits}.` : ''}`.trim(),
      }
    }
    case 'later':
      return {
        title: `${sentence(names.courseName(answer.course))} waits`,
        about: `What comes before it goes out now; ${names.courseName(answer.course)} ${answer.minutes} min later than usual after it.`,
      }
    case 'longer':
      return { title: `${answer.minutes} min longer`, about: `All of its course waits for “${names.stepName(answer.step)}”.` }
    case 'follow':
      return {
        title: 'It follows',
        about: `The rest goes out; ${names.dishName(answer.dish)} comes up to ${answer.minutes} min after it.`,
      }
    case 'other-way': {
      const way = names.step(answer.step)?.ways[answer.way]
      return { title: 'Do it otherwise', about: `“${names.stepName(answer.step)}”: ${way ? wayText(way) : 'the other way'}` }
    }
    case 'without':
      return { title: 'Without it', about: `${sentence(names.dishName(answer.dish))} is not served.` }
    case 'stand-in':
      return { title: sentence(names.dishName(answer.instead)), about: `Instead of ${names.dishName(answer.dish)}.` }
    case 'gone':
      return {
        title: `Go on without ${names.cookName(answer.cook)}`,
        about: 'What they had is planned anew among those who are here.',
      }
    case 'back':
      return { title: `${names.cookName(answer.cook)} is back`, about: 'From now on they are planned with again.' }
  }
}

/** What was told, for the line that says so. */
export const answeredText = (answer: Answer, evening: Evening, names: Names): string => {
  const { title, about } = answerWords(answer, evening, names)
  return `${title}. ${answer.kind === 'wait' || answer.kind === 'without' || answer.kind === 'stand-in' ? about : ''}`.trim()
}

/** What to do when an allergen got in: the usual caution, from memory; local rules, and whoever knows their allergy, go first. */
export const ALARM_TODO: readonly string[] = [
  'Set the dish aside, also what is plated. Picking it out does not make it safe.',
  'Ask whom it concerns whether they have eaten of it. With swelling, trouble breathing or faintness: their adrenaline pen at once, and the emergency number.',
  'Wash your hands, then take a clean board, knife, pan and cloth. Make their plate again from what was never near it.',
  'Plate it first, cover it, and let one person carry it. What is not known to be safe is not safe: then they get something else.',
]

/** Said when nobody has told anything for a while. */
export const silentText = (count: number): string =>
  `Nobody has told anything for a while, and ${countOf(count, 'thing', 'things')} should have happened.`

/** "“Potatoes in” begins", "Main comes to the table": what should have happened. */
export const caughtText = (one: CatchUp, names: Names): string => {
  switch (one.kind) {
    case 'begin':
      return `“${names.stepName(one.step)}” ${one.batch > 0 ? `(${one.batch + 1}) ` : ''}is begun`
    case 'end':
      return `“${names.stepName(one.step)}” ${one.batch > 0 ? `(${one.batch + 1}) ` : ''}is done`
    case 'to-table':
      return `${sentence(names.courseName(one.course))} is on the table`
    case 'plates-off':
      return `The plates of ${names.courseName(one.course)} are off`
  }
}

export const dueText = (one: CatchUp, zone: string): string => `planned for ${clockText(one.due, zone)}`

export const replyWords: Readonly<Record<Reply, string>> = {
  'not-yet': 'not yet',
  planned: 'yes, when it was planned',
  now: 'yes, just now',
  'ago-5': 'yes, 5 min ago',
  'ago-10': 'yes, 10 min ago',
  'ago-20': 'yes, 20 min ago',
  over: 'yes, and it is done already',
}

const soonText = (at: number, zone: string): string => `at ${clockText(at, zone)}`

/** What one asks a guest across the table, in a line. */
export const jobText = (job: Job, names: Names, zone: string): string => {
  switch (job.kind) {
    case 'chore':
      return `“Could you do this, ${soonText(job.at, zone)}: ${names.stepName(job.step)}?”`
    case 'pour':
      return `“Could you pour for ${names.courseName(job.course)}, ${soonText(job.at, zone)}?”`
    case 'clear':
      return `“Could you bring the plates out, ${soonText(job.at, zone)}?”`
    case 'carry':
      return `“Could you carry ${names.courseName(job.course)} to the table, ${soonText(job.at, zone)}? Nothing of it is hot.”`
    case 'seat':
      return `“Could you ask everybody to the table, ${soonText(job.at, zone)}?”`
  }
}
