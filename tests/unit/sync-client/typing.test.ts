import { describe, expect, test } from 'vitest'
import { bindText, type TextBox } from '#app/_sync/type-in.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { sharedText, typeText } from '#lib/plan/commands/type-text.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { dice } from '#tests/support/dice.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { copyOf, exchange, planOf } from '#tests/unit/plan/open-plan.ts'

/** A textarea as far as typing goes: letters come in at the selection, and the browser then says "input". */
const handBox = () => {
  const events = new EventTarget()
  const box = {
    value: '',
    selectionStart: 0,
    selectionEnd: 0,
    scrollTop: 0,
    setSelectionRange(start: number, end: number) {
      box.selectionStart = start
      box.selectionEnd = end
    },
    addEventListener: events.addEventListener.bind(events),
    removeEventListener: events.removeEventListener.bind(events),
    say: (type: string) => events.dispatchEvent(new Event(type)),
    put(letters: string) {
      for (const letter of letters) {
        box.value = box.value.slice(0, box.selectionStart) + letter + box.value.slice(box.selectionEnd)
        box.setSelectionRange(box.selectionStart + letter.length, box.selectionStart + letter.length)
        box.say('input')
      }
    },
    backspace(times: number) {
      for (let n = 0; n < times; n += 1) {
        const start = box.selectionStart === box.selectionEnd ? Math.max(0, box.selectionStart - 1) : box.selectionStart
        box.value = box.value.slice(0, start) + box.value.slice(box.selectionEnd)
        box.setSelectionRange(start, start)
        box.say('input')
      }
    },
  }
  return box
}

const lamb = readEvening('a-lamb')
const step = lamb.steps[0]?.id ?? ''

/** Two cooks with the same step open, each with a box. */
const twoCooks = (does: string) => {
  const doc = planOf(lamb)
  setFields(doc, 'steps', step, { does })
  const sides = [doc, copyOf(doc)].map((copy) => {
    const text = sharedText(copy, 'steps', step, 'does')
    if (!text) throw new Error('no text')
    const box = handBox()
    const undo = openUndo(copy)
    const close = bindText(box as unknown as TextBox, text, {
      hasCaret: () => true,
      type: (change, run) => undo.edit((plan) => typeText(plan, 'steps', step, 'does', change), run).ok,
    })
    return { doc: copy, box, undo, text, close }
  })
  const [kim, noor] = sides
  if (!kim || !noor) throw new Error('two cooks')
  return { kim, noor, meet: () => exchange(kim.doc, noor.doc) }
}

describe('typing together', () => {
  test('L7 each letter is in the plan as soon as it is typed, and comes into the other box without moving the caret', () => {
    const { kim, noor, meet } = twoCooks('Warm the bowls')
    kim.box.setSelectionRange(14, 14)
    noor.box.setSelectionRange(9, 9)
    kim.box.put(' in')
    expect(kim.text.toString()).toBe('Warm the bowls in')
    meet()
    expect([noor.box.value, noor.box.selectionStart]).toEqual(['Warm the bowls in', 9])
    noor.box.put('six ')
    meet()
    expect([kim.box.value, kim.box.selectionStart]).toEqual(['Warm the six bowls in', 21])
    kim.box.put(' the sink')
    meet()
    expect([kim.box.value, noor.box.value]).toEqual(['Warm the six bowls in the sink', 'Warm the six bowls in the sink'])
    expect(noor.box.selectionStart).toBe(13)
  })

  test('L7 of equal letters the one at the caret is meant, and a selection is replaced', () => {
    const { kim, noor, meet } = twoCooks('peel')
    kim.box.setSelectionRange(2, 2)
    kim.box.put('e')
    noor.box.setSelectionRange(3, 3)
    noor.box.put('-')
    meet()
    expect([kim.box.value, noor.box.value]).toEqual(['peee-l', 'peee-l'])
    kim.box.setSelectionRange(0, kim.box.value.length)
    kim.box.put('X')
    meet()
    expect([kim.text.toString(), noor.box.value]).toEqual(['X', 'X'])
  })

  test('L7 while a letter is composed the box is left alone, and nobody’s letters are lost', () => {
    const { kim, noor, meet } = twoCooks('caf au lait')
    kim.box.setSelectionRange(3, 3)
    kim.box.say('compositionstart')
    kim.box.put('´')
    noor.box.put('Hot ')
    meet()
    expect([kim.box.value, kim.text.toString()]).toEqual(['caf´ au lait', 'Hot caf´ au lait'])
    // The accent becomes its letter.
    kim.box.value = 'café au lait'
    kim.box.say('input')
    expect(kim.text.toString()).toBe('Hot caf´ au lait')
    kim.box.say('compositionend')
    expect([kim.box.value, kim.box.selectionStart, kim.text.toString()]).toEqual(['Hot café au lait', 8, 'Hot café au lait'])
    meet()
    expect(noor.box.value).toBe('Hot café au lait')
  })

  test('L7 what is refused goes out of the box again; a pasted newline comes in as a space', () => {
    const { kim } = twoCooks('x'.repeat(399))
    kim.box.setSelectionRange(399, 399)
    kim.box.put('y')
    kim.box.put('z')
    expect(kim.box.value).toBe(`${'x'.repeat(399)}y`)
    kim.box.setSelectionRange(0, 400)
    kim.box.put('\n')
    expect([kim.box.value, kim.text.toString()]).toEqual([' ', ' '])
  })

  test('L5 one typed word is one step of undo, a stretch of deleting another; the caret follows', () => {
    const { kim } = twoCooks('')
    kim.box.put('peel them all')
    kim.box.backspace(4)
    expect(kim.box.value).toBe('peel them')
    const undone: string[] = []
    while (kim.undo.undo()) undone.push(kim.box.value)
    expect(undone).toEqual(['peel them all', 'peel them ', 'peel ', ''])
    kim.undo.redo()
    expect([kim.box.value, kim.box.selectionStart]).toEqual(['peel ', 5])
    kim.box.put('it')
    kim.box.say('blur')
    kim.box.put('!')
    kim.undo.undo()
    expect(kim.box.value).toBe('peel it')
  })

  test('L7 two people typing at random, 100 seeds: box, text and the other’s box end the same, and no letter is lost or doubled', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const chance = dice(seed)
      const { kim, noor, meet } = twoCooks('')
      let count = 0
      const typed = new Set<string>()
      for (let n = 0; n < 40; n += 1) {
        const { box } = chance.pick([kim, noor])
        const at = chance.int(0, box.value.length)
        if (chance.chance(0.6)) {
          box.setSelectionRange(at, at)
          const letter = String.fromCodePoint(0x4e00 + count)
          count += 1
          typed.add(letter)
          box.put(letter)
        } else if (chance.chance(0.3)) {
          box.setSelectionRange(at, Math.min(box.value.length, at + 1))
          if (box.selectionEnd > at) {
            typed.delete(box.value[at] ?? '')
            box.backspace(1)
          }
        } else meet()
      }
      meet()
      expect(kim.box.value, `seed ${seed}`).toBe(kim.text.toString())
      expect(noor.box.value, `seed ${seed}`).toBe(kim.box.value)
      expect([...kim.box.value].toSorted(), `seed ${seed}`).toEqual([...typed].toSorted())
    }
  })
})
