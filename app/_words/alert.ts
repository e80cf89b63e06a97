import type { Call } from '#app/_alerts/ringing.ts'
import type { Names } from './names.ts'

/** What a call is about, named by its dish; short enough to be spoken over a pan. */
export const callText = (call: Call, names: Names): string => {
  if (call.kind === 'alarm') return `Stop: do not serve ${names.dishName(call.dish)}. Look at the board.`
  const step = call.step === undefined ? 'something' : names.stepName(call.step)
  const dish = call.step === undefined ? undefined : names.dish(names.step(call.step)?.dish ?? null)
  const of = dish ? `${dish.name}: ` : ''
  const course = call.course === undefined ? 'the course' : names.courseName(call.course)
  switch (call.kind) {
    case 'begin':
      return `${of}begin. ${step}.`
    case 'touch':
      return call.touch === 'out' ? `${of}it is time to take it out. ${step}.` : `${of}see to it. ${step}.`
    case 'look':
      return `${of}look whether it is done. ${step}.`
    case 'get-up':
      return `${of}time to get up. ${step}.`
    case 'plate':
      return `${course}: plating in a few minutes.`
    case 'serve':
      return `${course}: to the table.`
    case 'overdue':
      return `${of}nothing was told yet. ${step}.`
  }
}

/** To whom, where a device calls for several: first their name, then what. */
export const calledText = (call: Call, names: Names): string => {
  const to = call.cooks.map((cook) => names.cookName(cook))
  return to.length === 0 ? callText(call, names) : `${to.join(' and ')}. ${callText(call, names)}`
}
