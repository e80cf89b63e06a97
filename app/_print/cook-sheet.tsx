import { clockText, sentence } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import { alarmText } from '#app/_words/night-alarm.ts'
import { fillingText, handsText, plateCount } from '#app/_words/night-plating.ts'
import { blockWords, peopleText, whenText } from '#app/_words/print.ts'
import { DEFER, safetyWords } from '#app/_words/safety.ts'
import { sheetWords } from '#app/_words/sheet.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { platingOf } from '#lib/night/plating.ts'
import { type SheetBlock, type SheetLine, sheetOf } from '#lib/night/sheet.ts'
import type { Finding } from '#lib/safety/finding.ts'
import css from './sheet.module.css'

export interface SheetProps {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
  /** What food safety says of the whole order. */
  readonly findings: readonly Finding[]
  /** What must be kept from whom, without names; null: nothing is to be printed of it. */
  readonly needs: readonly string[] | null
  /** How new it is. */
  readonly foot: string
}

/** One cook's evening on paper: blocks up to each course, each line with its clock, and a box to tick with a pen. */
export function CookSheet({ cook, ...props }: SheetProps & { readonly cook: string }) {
  const { evening, order, names, findings, needs, foot } = props
  const blocks = sheetOf(evening, order, cook)
  const steps = new Set(blocks.flatMap(({ lines }) => lines.flatMap((line) => (line.kind === 'do' ? [line.task.step] : []))))
  const dishes = new Set([...steps].map((step) => names.step(step)?.dish ?? null))
  const own = findings.filter((each) => (each.step === null ? dishes.has(each.dish) : steps.has(each.step)))
  return (
    <article className={css.sheet} aria-label={`The sheet of ${names.cookName(cook)}`}>
      <header className={css.sheetHead}>
        <h2>{names.cookName(cook)}</h2>
        <p>
          <b>{evening.name}</b> {peopleText(evening)}. {whenText(evening)}.
        </p>
      </header>
      <Warnings evening={evening} names={names} needs={needs} />
      {steps.size === 0 ? <p>Nothing to do in this order.</p> : null}
      {blocks.map((block) => (
        <Block key={keyOf(block)} block={block} cook={cook} evening={evening} order={order} names={names} />
      ))}
      <SafetyNotes findings={own} evening={evening} names={names} />
      <p className={css.foot}>{foot}</p>
    </article>
  )
}

const keyOf = (block: SheetBlock): string =>
  block.kind === 'course' ? block.course : block.kind === 'day' ? `${block.day}` : block.kind

interface BlockProps extends Pick<SheetProps, 'evening' | 'order' | 'names'> {
  readonly block: SheetBlock
  readonly cook: string
}

function Block({ block, cook, evening, order, names }: BlockProps) {
  const { title, when } = blockWords(block, evening, names)
  return (
    <section className={css.block}>
      <h3>
        {title} <span>{when}</span>
      </h3>
      {block.lines.length === 0 ? null : (
        <ol>
          {block.lines.map((line) => (
            <Line key={`${line.at} ${lineKey(line)}`} line={line} cook={cook} evening={evening} names={names} />
          ))}
        </ol>
      )}
      {block.kind === 'course' ? (
        <Served course={block.course} platesOff={block.platesOff} cook={cook} evening={evening} order={order} names={names} />
      ) : null}
    </section>
  )
}

const lineKey = (line: SheetLine): string => {
  switch (line.kind) {
    case 'do':
      return `${line.task.step} ${line.task.batch} ${line.what} ${line.task.touch?.what ?? ''}`
    case 'oven':
      return `${line.oven} ${line.turn}`
    case 'sit':
      return 'sit'
    case 'pour':
    case 'clear':
      return `${line.kind} ${line.course}`
  }
}

function Line({ line, cook, evening, names }: { readonly line: SheetLine } & Omit<BlockProps, 'block' | 'order'>) {
  const { head, notes } = sheetWords(line, cook, evening, names)
  return (
    <li className={line.kind === 'do' ? css.line : css.aside}>
      <b className={css.clock}>{clockText(line.at, evening.zone)}</b>
      <div>
        <p className={css.head}>{head}</p>
        {notes.length > 0 ? <p className={css.notes}>{notes.join(' ')}</p> : null}
      </div>
      {line.kind === 'do' ? <span className={css.box} aria-hidden="true" /> : <span />}
    </li>
  )
}

interface ServedProps extends Omit<BlockProps, 'block'> {
  readonly course: string
  readonly platesOff: number
}

/** How the course goes to the table: how many plates, what first, who plates and who carries. */
function Served({ course, platesOff, cook, evening, order, names }: ServedProps) {
  const plating = platingOf({ ...evening, night: [] }, order, course, Number.NEGATIVE_INFINITY)
  const isMine = plating !== null && [...plating.hands, ...plating.carriers, ...plating.guardCarriers].includes(cook)
  const off = `Plates off about ${clockText(platesOff, evening.zone)}.`
  if (!plating || !isMine) return <p className={css.served}>{off}</p>
  return (
    <p className={css.served}>
      <b>{sentence(plateCount(plating))}:</b>{' '}
      {plating.fill.map((filling) => fillingText(filling, plating.service, names)).join('; ')}.{' '}
      {handsText(plating, names).join(' ')} {off}
    </p>
  )
}

/** What is not to be served to whom, and what guests must not have: above everything else. */
export function Warnings({
  evening,
  names,
  needs,
  look = css.warnings,
}: Pick<SheetProps, 'evening' | 'names' | 'needs'> & { readonly look?: string | undefined }) {
  const alarms = evening.night.flatMap((fact) => ('alarm' in fact ? [alarmText(fact.dish, fact.need, names)] : []))
  if (alarms.length === 0 && (needs === null || needs.length === 0)) return null
  return (
    <div className={look}>
      {alarms.map((text) => (
        <p key={text}>
          <b>{text}</b>
        </p>
      ))}
      {needs === null ? null : <p>{needs.join(' ')}</p>}
    </div>
  )
}

/** What the rules say is to be done, and what is beyond them, for the food at hand. */
export function SafetyNotes({ findings, evening, names }: Pick<SheetProps, 'findings' | 'evening' | 'names'>) {
  const said = [
    ...new Set(
      findings.map((finding) => {
        const { says, todo } = safetyWords(finding, names, evening)
        return `${finding.weight === 'beyond' ? 'Beyond the rules: ' : ''}${says} ${todo}`
      }),
    ),
  ]
  return (
    <section className={css.safety}>
      <h3>Food safety</h3>
      {said.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <p>{DEFER}</p>
    </section>
  )
}
