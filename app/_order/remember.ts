/**
 * Remembers the last answers, by the identity of what was asked. React throws away a drawing that something more urgent interrupts, and
 * with it what `useMemo` held: so a drawing that is begun again finds what was already worked out.
 */
export const remember = <Asked extends readonly unknown[], Answer>(answer: (...asked: Asked) => Answer, kept = 2) => {
  let known: readonly { readonly asked: Asked; readonly answer: Answer }[] = []
  return (...asked: Asked): Answer => {
    const before = known.find((one) => one.asked.every((value, at) => Object.is(value, asked[at])))
    const found = before ?? { asked, answer: answer(...asked) }
    if (known[0] !== found) known = [found, ...known.filter((one) => one !== found)].slice(0, kept)
    return found.answer
  }
}
