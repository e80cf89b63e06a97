import { Command, type Outcome, type TellCommand } from '#lib/plan/wire.ts'
import type { Told, Wanted } from './plan.ts'
import type { Shelf } from './shelf.ts'

/** Commands that the server has not answered yet, in the order in which they were given. */
export interface Commands {
  /** Keeps a command until it is answered, also across a reload. */
  ask(wanted: Wanted): { readonly command: Command; readonly answered: Promise<Outcome> }
  /** Everything to be sent again on a new connection. */
  waiting(): readonly Command[]
  /** What is told and not answered, in order. */
  tells(): readonly TellCommand[]
  /** target → the cook it was asked for. */
  asking(): ReadonlyMap<string, string>
  answer(outcome: Outcome): void
  /** Refusals of commands given before a reload, which nobody waits for any more. */
  told(): readonly Told[]
  hear(op: string): void
}

const GIVES_BACK: ReadonlySet<Command['kind']> = new Set(['release', 'leave'])

interface Waiting {
  readonly command: Command
  readonly key: string
  readonly resolve: ((outcome: Outcome) => void) | null
}

/** 128 random bits; `crypto.randomUUID` is missing on plain http. */
const newOp = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('')

const parsed = (text: string | null): Command | null => {
  try {
    return Command.parse(JSON.parse(text ?? 'null'))
  } catch {
    return null
  }
}

/** `now` orders the commands of different pages. */
export const openCommands = (shelf: Shelf, prefix: string, now: () => number): Commands => {
  const waiting = new Map<string, Waiting>()
  let told: readonly Told[] = []
  let count = 0
  for (const key of shelf.keys(prefix).toSorted()) {
    const command = parsed(shelf.get(key))
    if (command) waiting.set(command.op, { command, key, resolve: null })
    else shelf.remove(key)
  }

  return {
    ask(wanted) {
      const command = Command.parse({ ...wanted, op: newOp() })
      count += 1
      const key = `${prefix}${String(now()).padStart(14, '0')}-${String(count).padStart(6, '0')}-${command.op}`
      shelf.set(key, JSON.stringify(command))
      const answered = new Promise<Outcome>((resolve) => {
        waiting.set(command.op, { command, key, resolve })
      })
      return { command, answered }
    },
    waiting: () => [...waiting.values()].map(({ command }) => command),
    tells: () => [...waiting.values()].flatMap(({ command }) => (command.kind === 'tell' ? [command] : [])),
    asking: () =>
      new Map(
        [...waiting.values()].flatMap(({ command }) =>
          command.kind === 'tell' || GIVES_BACK.has(command.kind) ? [] : [[command.target, command.cook]],
        ),
      ),
    answer(outcome) {
      const asked = waiting.get(outcome.op)
      if (!asked) return
      waiting.delete(outcome.op)
      shelf.remove(asked.key)
      if (asked.resolve) asked.resolve(outcome)
      else if (outcome.kind === 'refused') told = [...told, { command: asked.command, outcome }]
    },
    told: () => told,
    hear(op) {
      told = told.filter(({ command }) => command.op !== op)
    },
  }
}
